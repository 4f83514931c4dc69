/**
 * Ordinary kriging from 16 neighbours by gstat, where R and gstat are installed: the yardstick for large networks. Once
 * plainly, at as many points as there are gauges, and once leaving out each of some gauges as its own cross-validation
 * does, which goes over the whole network for every gauge left out and so is timed on a part.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'

const leftOutCount = 500

const script = `
suppressMessages(library(gstat)); suppressMessages(library(sp))
words <- commandArgs(trailingOnly = TRUE)
points <- read.csv(words[1])
points$root <- sqrt(points$mm)
shifted <- data.frame(x = points$x + 500, y = points$y + 500)
coordinates(points) <- ~ x + y
coordinates(shifted) <- ~ x + y
model <- vgm(psill = 2, model = "Exp", range = 60000, nugget = 0.3)
started <- proc.time()[["elapsed"]]
plain <- krige(root ~ 1, points, shifted, model, nmax = 16, debug.level = 0)
cat("plain", proc.time()[["elapsed"]] - started, "\\n")
chosen <- seq(1, nrow(points), length.out = ${leftOutCount})
started <- proc.time()[["elapsed"]]
for (one in chosen) krige(root ~ 1, points[-one, ], points[one, ], model, nmax = 16, debug.level = 0)
cat("left", proc.time()[["elapsed"]] - started, "\\n")
`

/** Times the last day of the network; the time to start R is left out. */
export async function gstatKriging(network: SyntheticNetwork, workFolder: string): Promise<SpeedLine[]> {
  const count = network.table.gaugeCount
  const plain = `gstat: kriging at ${count} points, 16 neighbours`
  const there = await runMeasured('Rscript', ['-e', 'library(gstat); library(sp)'])
  if (there.failure !== null) return [skipped(plain, 'R with gstat is not installed (apt install r-cran-gstat)')]
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
  const seconds = (word: string): number => Number(new RegExp(`${word} ([\\d.]+)`).exec(run.stdout)?.[1])
  if (run.failure !== null) return [skipped(plain, run.failure)]
  return [
    { what: plain, figure: `${seconds('plain').toFixed(2)} s`, aim: 'our findings at most as long' },
    {
      what: `gstat: leaving out ${leftOutCount} of ${rows.length} gauges one by one`,
      figure: `${seconds('left').toFixed(2)} s (${((seconds('left') * rows.length) / leftOutCount).toFixed(0)} s for all)`,
      aim: '',
    },
  ]
}
