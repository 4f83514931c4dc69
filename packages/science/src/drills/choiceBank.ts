/**
 * Questions with choices, by their names; the words stand with the pages. What is right is common practice in volunteer
 * networks; safety defers to official advice.
 */
import type { ChoiceDrill } from './drill.ts'

interface Entry {
  skill: Exclude<ChoiceDrill['skill'], 'hail size'>
  question: string
  options: readonly string[]
  right: string
  numbers: (random: () => number) => Record<string, number>
}

const none = () => ({})
const hundredths = (random: () => number) => ({ hundredths: 20 + Math.floor(random() * 70) })

export const choiceBank: readonly Entry[] = [
  {
    skill: 'zero or silence',
    question: 'away',
    options: ['zero', 'nothing', 'trace'],
    right: 'nothing',
    numbers: none,
  },
  { skill: 'zero or silence', question: 'dry', options: ['zero', 'nothing', 'trace'], right: 'zero', numbers: none },
  {
    skill: 'zero or silence',
    question: 'forgot',
    options: ['zero', 'nothing', 'guess'],
    right: 'nothing',
    numbers: none,
  },
  {
    skill: 'zero or silence',
    question: 'drizzle',
    options: ['zero', 'nothing', 'trace'],
    right: 'trace',
    numbers: none,
  },
  {
    skill: 'zero or silence',
    question: 'tipped over',
    options: ['zero', 'nothing', 'guess'],
    right: 'nothing',
    numbers: none,
  },
  {
    skill: 'several days',
    question: 'weekend',
    options: ['total', 'as today', 'divided'],
    right: 'total',
    numbers: hundredths,
  },
  {
    skill: 'several days',
    question: 'found on friday',
    options: ['total', 'as today', 'divided'],
    right: 'total',
    numbers: hundredths,
  },
  {
    skill: 'several days',
    question: 'late reading',
    options: ['true hour', 'as if seven', 'tomorrow'],
    right: 'true hour',
    numbers: none,
  },
  {
    skill: 'several days',
    question: 'whose day',
    options: ['this morning', 'yesterday', 'tomorrow'],
    right: 'this morning',
    numbers: none,
  },
  {
    skill: 'safety',
    question: 'thunder',
    options: ['stay in', 'be quick', 'umbrella'],
    right: 'stay in',
    numbers: none,
  },
  {
    skill: 'safety',
    question: 'after thunder',
    options: ['thirty minutes', 'five minutes', 'at once'],
    right: 'thirty minutes',
    numbers: none,
  },
  {
    skill: 'safety',
    question: 'hail falling',
    options: ['stay in', 'helmet', 'be quick'],
    right: 'stay in',
    numbers: none,
  },
  { skill: 'safety', question: 'flood', options: ['leave it', 'wade', 'drive'], right: 'leave it', numbers: none },
  {
    skill: 'safety',
    question: 'ice',
    options: ['leave it', 'be quick', 'hot water'],
    right: 'leave it',
    numbers: none,
  },
  { skill: 'safety', question: 'ladder', options: ['lower it', 'ladder', 'roof'], right: 'lower it', numbers: none },
]
