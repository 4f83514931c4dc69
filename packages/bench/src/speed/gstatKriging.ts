/** Leave-one-out kriging with 16 neighbours by gstat, where R and gstat are installed: the yardstick for large networks. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'

const script = `
suppressMessages(library(gstat)); suppressMessages(library(sp))
words <- commandArgs(trailingOnly = TRUE)
points <- read.csv(words[1])
points$root <- sqrt(points$mm)
coordinates(points) <- ~ x + y
model <- vgm(psill = 2, model = "Exp", range = 60000, nugget = 0.3)
started <- proc.time()[["elapsed"]]
left <- krige.cv(root ~ 1, points, model, nmax = 16, verbose = FALSE)
cat("seconds", proc.time()[["elapsed"]] - started, "rmse", sqrt(mean(left$residual^2)), "\\n")
`

/** Times the last day of the network; the time to start R is left out. */
export async function gstatKriging(network: SyntheticNetwork, workFolder: string): Promise<SpeedLine> {
  const what = `kriging by gstat, leave-one-out, 16 neighbours, ${network.table.gaugeCount} gauges`
  const there = await runMeasured('Rscript', ['-e', 'library(gstat); library(sp)'])
  if (there.failure !== null) return skipped(what, 'R with gstat is not installed (apt install r-cran-gstat)')
  const points = join(workFolder, 'points.csv')
  const program = join(workFolder, 'krige.R')
  const { gauges, table } = network
  const start = (table.dayCount - 1) * table.gaugeCount
  const rows = gauges.ids.flatMap((_, g) => {
    const amountMm = table.amountMm[start + g]!
    return Number.isNaN(amountMm) ? [] : [`${gauges.xM[g]},${gauges.yM[g]},${amountMm}`]
  })
  writeFileSync(points, `x,y,mm\n${rows.join('\n')}\n`)
  writeFileSync(program, script)
  const run = await runMeasured('Rscript', [program, points])
  const seconds = /seconds ([\d.]+)/.exec(run.stdout)?.[1]
  if (run.failure !== null || seconds === undefined) return skipped(what, run.failure ?? 'R gave no time')
  return { what, figure: `${Number(seconds).toFixed(2)} s`, aim: 'ours at most as long' }
}
