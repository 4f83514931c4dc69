import { createElement } from 'react'
import { printable } from '../paper/printable.ts'
import { Leaf, type LeafProps } from './Leaf.tsx'
import { NetworkLetter, type NetworkLetterProps } from './NetworkLetter.tsx'

/** @returns the page as one HTML file that needs no other */
export function printLeaf(props: LeafProps): string {
  return printable(createElement(Leaf, props))
}

/** @returns the letter as one HTML file that needs no other */
export function printNetworkLetter(props: NetworkLetterProps): string {
  return printable(createElement(NetworkLetter, props))
}
