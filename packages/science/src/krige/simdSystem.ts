/**
 * The kernel of smallSystem.ts with two numbers to an instruction: the machine code of simdSystem.wat, which is small
 * enough to be read, run by the engine's WebAssembly.
 */
import { simdSystemBytes } from './simdSystemBytes.ts'
import { roomLength, type SmallSystem } from './systemRoom.ts'

/** As much of the engine's WebAssembly as is used here; the language's own types leave it out. */
interface WebAssemblyEngine {
  Module: new (bytes: Uint8Array) => object
  Instance: new (module: object) => { exports: { room: { buffer: ArrayBuffer }; solve: (count: number) => void } }
}

declare const WebAssembly: WebAssemblyEngine | undefined

/** @returns null where there is no WebAssembly with wide numbers, or a page's policy forbids it */
export function simdSystem(
  engine: WebAssemblyEngine | null = typeof WebAssembly === 'undefined' ? null : WebAssembly,
): SmallSystem | null {
  if (engine === null) return null
  try {
    const { room, solve } = new engine.Instance(new engine.Module(simdSystemBytes)).exports
    return { room: new Float64Array(room.buffer, 0, roomLength), solve }
  } catch {
    return null
  }
}
