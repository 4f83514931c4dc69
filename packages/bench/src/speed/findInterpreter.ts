/** Finds R or Python with the libraries that a reference program needs; neither is part of the project. */
import { runMeasured } from './runMeasured.ts'

export interface Interpreter {
  /** Environment variable that names the program to use. */
  variable: string
  /** Tried in this order where the variable is not set. */
  candidates: readonly string[]
  /** Words that end well only where the libraries are there, and print their version. */
  probe: readonly string[]
  /** Debian package that brings it all. */
  debianPackage: string
}

export type FoundInterpreter = { program: string; version: string } | { missing: string }

export const rWithGstat: Interpreter = {
  variable: 'GAUGEWRIGHT_RSCRIPT',
  candidates: ['Rscript'],
  probe: ['-e', 'suppressMessages({library(gstat); library(sp)}); cat("gstat", format(packageVersion("gstat")))'],
  debianPackage: 'r-cran-gstat',
}

/** A Python that somebody put in front of the system's often lacks the system's libraries: both are tried. */
export const pythonWithSklearn: Interpreter = {
  variable: 'GAUGEWRIGHT_PYTHON',
  candidates: ['python3', '/usr/bin/python3'],
  probe: ['-c', 'import numpy, sklearn; print("scikit-learn", sklearn.__version__, end="")'],
  debianPackage: 'python3-sklearn',
}

export async function findInterpreter(
  wanted: Interpreter,
  environment: Readonly<Record<string, string | undefined>> = process.env,
): Promise<FoundInterpreter> {
  const named = environment[wanted.variable]
  const isNamed = named !== undefined && named !== ''
  for (const program of isNamed ? [named] : wanted.candidates) {
    const probe = await runMeasured(program, wanted.probe)
    if (probe.failure === null) return { program, version: probe.stdout.trim() }
  }
  const advice = `install with apt-get install ${wanted.debianPackage}, or set ${wanted.variable}`
  return {
    missing: isNamed ? `${wanted.variable} is ${named}, which has it not; ${advice}` : `not installed; ${advice}`,
  }
}
