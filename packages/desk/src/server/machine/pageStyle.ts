/** Style of the page that describes the machine interface: one file of our own, so that the strict content policy holds. */
export const pageStyle = `
:root { color-scheme: light dark; --ink: #1b2430; --paper: #fff; --quiet: #4a5664; --line: #c9d1da; --shade: #f2f5f8; --mark: #0b5c8a }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e6ebf0; --paper: #12181f; --quiet: #aab6c2; --line: #36424e; --shade: #1b242d; --mark: #7cc4ee }
}
* { box-sizing: border-box }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif }
h1 { font-size: 1.6rem; line-height: 1.2 }
h2 { margin-top: 2.5rem; padding-top: 1rem; border-top: 1px solid var(--line); font-size: 1.2rem }
h3 { font-size: 1rem; margin: 1.2rem 0 .4rem }
a { color: var(--mark) }
a:focus-visible, summary:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px }
code, pre { font-family: ui-monospace, monospace; font-size: .9rem }
pre { overflow-x: auto; padding: .75rem; background: var(--shade); border: 1px solid var(--line); border-radius: .25rem }
.way { font-weight: 700; text-transform: uppercase }
.quiet { color: var(--quiet) }
.wide { overflow-x: auto }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: .35rem .6rem .35rem 0; border-bottom: 1px solid var(--line) }
td p { margin: 0 }
`
