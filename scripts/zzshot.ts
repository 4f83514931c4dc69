import { chromium } from 'playwright-core'
const [,, path, name, ...acts] = process.argv
const b = await chromium.launch({executablePath:'/usr/bin/chromium',args:['--no-sandbox']})
for (const [size, scheme] of [[{width:1440,height:1000},'light'],[{width:360,height:760},'dark']] as const) {
  const c = await b.newContext({viewport:size,colorScheme:scheme,hasTouch:size.width<400}); const p = await c.newPage(); p.setDefaultTimeout(3000)
  p.on('console', m => { if (m.type()==='error') console.log('console', m.text()) }); p.on('pageerror', e => console.log('error', e.message))
  await p.goto('http://127.0.0.1:8200'+path); await p.waitForTimeout(2500)
  for (const act of acts) { try { await eval(`(async()=>{${act}})()`) } catch (e) { console.log(String(e).slice(0,300)) } await p.waitForTimeout(400) }
  await p.screenshot({path:`/tmp/gw/${name}-${size.width}.png`,fullPage:true}); console.log(size.width, await p.evaluate(()=>[document.documentElement.scrollWidth, innerWidth]))
  await c.close()
}
await b.close()
