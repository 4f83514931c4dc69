/** While developing: lets a worker thread read TypeScript, then runs the program named in its first argument. */
import { register } from 'tsx/esm/api'

register()
const program = await import(process.argv[2])
export const workOn = program.workOn
