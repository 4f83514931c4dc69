// Contents, by chapter. Named exports only.

// Models, judgements, expectations
export type { Climate } from './climate/climate.ts'
// Coded text
export { decodeShef } from './coded/decodeShef.ts'
export {
  encodeShefSeries,
  encodeShefTable,
  encodeShefValues,
  type ShefSeries,
  type ShefTable,
  type ShefText,
} from './coded/encodeShef.ts'
export { encodeStormBulletin, encodeStormReport, type StormText } from './coded/encodeStormReport.ts'
export { placeFromTown } from './coded/placeFromTown.ts'
export { type Settled, ShefSettler, settledShef } from './coded/settleShef.ts'
export type {
  DecodedShefValue,
  ShefDatum,
  ShefDecoded,
  ShefOutcome,
  ShefProblem,
  ShefProblemCode,
  ShefSpan,
  ShefValue,
} from './coded/shef.ts'
export { shefAmount, shefDepth, shefWholeDays } from './coded/shefAmount.ts'
export { type ShefReading, type ShefReadings, shefReadings } from './coded/shefReadings.ts'
export {
  type StormEvent,
  type StormMagnitude,
  type StormOffice,
  type StormReport,
  stormEvents,
  stormSources,
} from './coded/stormReport.ts'
// Drills
export {
  type ChoiceDrill,
  type Drill,
  type DrillSkill,
  drillSkills,
  type GaugeDrill,
  HAIL_QUESTION,
  type HailDrill,
  type SiteDrill,
  TUBE_INNER_MM,
  TUBE_MAGNIFICATION,
} from './drills/drill.ts'
export { apparentUm, makeDrill } from './drills/makeDrill.ts'
export { type DrillMark, type DrillReason, drillReasons, markDrill } from './drills/markDrill.ts'
export { type DrillPast, nextSkill, SITTING_LENGTH } from './drills/nextSkill.ts'
export { type SittingResult, type SkillShown, sittingResult } from './drills/sittingResult.ts'
export { drillFactor, untrainedFactor, withDrills } from './drills/startingOdds.ts'
// The check at entry
export { checkAlone, type EntryTypedAt } from './entry/checkAlone.ts'
export { type EntryAlternative, type EntryQuestion, entryQuestion } from './entry/entryQuestion.ts'
export { type EntryJudged, judgeEntry } from './entry/judgeEntry.ts'
export { type PocketClimate, pocketClimate } from './entry/pocketClimate.ts'
export { ScienceError, type ScienceErrorCode } from './error.ts'
export type { Correlation } from './expectation/correlation.ts'
export { expectAtPoints } from './expectation/expectAtPoints.ts'
export { believingModel, type ExpectAsk, type Expectations, evenLevels } from './expectation/expectations.ts'
export { expectLeaveOneOut } from './expectation/expectLeaveOneOut.ts'
export { amountMoments, amountQuantile, dryChance, type Predictive, predictiveAt } from './expectation/predictive.ts'
// The rain field of a day
export { type AreaMeans, type AreaMeansAsk, areaMeans } from './field/areaMeans.ts'
export type { DayAmounts, FieldTargets, FieldValues } from './field/fieldDay.ts'
export { type DayField, fieldForDay } from './field/fieldForDay.ts'
export { degreeGrid, type FieldGrid, type GridFrame, metricGrid } from './field/fieldGrid.ts'
export type { FieldParams } from './field/fieldParams.ts'
export { fieldQuantiles } from './field/fieldQuantiles.ts'
export { fieldWith } from './field/fieldWith.ts'
export { type FieldPrior, fitField, usualFieldPrior } from './field/fitField.ts'
export { isohyetLevels } from './field/isohyetLevels.ts'
export { type Isohyet, isohyets, type Position } from './field/isohyets.ts'
// Habits
export { findHabits, type GaugeHabits, type NetworkHabits } from './habits/findHabits.ts'
export { digitsFromSteps } from './habits/gaugeDigits.ts'
export { type Habit, type HabitKind, habitKinds } from './habits/habit.ts'
export { amountClassesMm, lightBelowMm } from './habits/lightAmounts.ts'
// Holding on
export { type GoingQuiet, goingQuiet } from './holding/goingQuiet.ts'
export { countedOccasions, type Occasion } from './holding/occasions.ts'
export { type AnswerState, answerStates, type RollOverTime, rollOverTime } from './holding/rollOverTime.ts'
export { type Sharpening, sharpening } from './holding/sharpening.ts'
// Kriging
export { inverseDistance } from './krige/inverseDistance.ts'
export type { Estimates, MeasuredPoints, Targets } from './krige/krigingSystem.ts'
export { leaveOneOut } from './krige/leaveOneOut.ts'
export { type KrigingAsk, ordinaryKriging, simpleKriging } from './krige/ordinaryKriging.ts'
export { thiessenWeights } from './krige/thiessenWeights.ts'
export { evidenceAt, findingAt, findingIndex } from './mistakes/evidence.ts'
export { type ExpectedOver, expectedOver } from './mistakes/expectedOver.ts'
export {
  type DayAround,
  type Evidence,
  type Expectation,
  type Explanation,
  type ExplanationDetail,
  expectationLevels,
  type Finding,
  type NeighbourEvidence,
} from './mistakes/finding.ts'
export { judge } from './mistakes/judge.ts'
export type { JudgeAsk, Judgement } from './mistakes/judgement.ts'
// Mistakes and findings
export { type ExplanationKind, type Mistake, mistakes } from './mistakes/mistake.ts'
export { rejudge } from './mistakes/rejudge.ts'
export { learnModel } from './model/learnModel.ts'
export { type DecidedCounts, type DecidedRates, learnRatesFromDecisions } from './model/learnRatesFromDecisions.ts'
export { type Model, modelVersion } from './model/model.ts'
export { withDecidedRates } from './model/withDecidedRates.ts'
export { type DailyTable, emptyDailyTable } from './network/dailyTable.ts'
// Networks
export type { GaugeSet } from './network/gaugeSet.ts'
export { tableRows } from './network/tableRows.ts'
// Readings
export type {
  AmountAnswer,
  AmountChoice,
  AmountProblemCode,
  AmountQuestionCode,
  FillProblemCode,
} from './reading/amountAnswer.ts'
export type { Arrangement, ArrangementNote, DayCover, DayState } from './reading/arrangement.ts'
export { type ArrangeableReading, arrangeReadings } from './reading/arrangeReadings.ts'
export {
  dateFromEpochDay,
  daysInMonth,
  type EpochDay,
  epochDayFromDate,
  epochDayFromIso,
  isoFromEpochDay,
  parseIsoDay,
} from './reading/epochDay.ts'
export {
  checkGaugeCode,
  type GaugeCode,
  type GaugeCodeAnswer,
  type GaugeCodeProblemCode,
  gaugeCodeFromSerial,
} from './reading/gaugeCode.ts'
export { formatInstant, parseInstant } from './reading/instant.ts'
export { type ObservingDays, type ObservingDaysAnswer, observingDays } from './reading/observingDay.ts'
export { type ParseAmountOptions, parseAmount } from './reading/parseAmount.ts'
export {
  type AcceptWindow,
  type PlacedReading,
  placeReading,
  type Timing,
  usualWindow,
} from './reading/placeReading.ts'
export type {
  Amount,
  Confirmed,
  Decision,
  Door,
  IsoDay,
  Reading,
  ReadingKind,
  Unit,
  Verdict,
} from './reading/reading.ts'
export type { DecimalMark } from './reading/readNumber.ts'
export { addAmounts, sumAmounts } from './reading/sumAmounts.ts'
export { type FillsAnswer, inchTube, metricTube, sumFills, type TubeSizes } from './reading/sumFills.ts'
export { recordDayUm } from './reading/weighAmount.ts'
export { wordArrangementNote } from './reading/wordArrangementNote.ts'
// A rule that decides alone
export { type CountRange, countRange } from './rule/countRange.ts'
export { expectedLetThrough, type LetThrough, letStandAtFor } from './rule/expectedLetThrough.ts'
export { forecastWrong, type WrongForecast } from './rule/forecastWrong.ts'
export { countQuantile, poissonBinomial } from './rule/poissonBinomial.ts'
export { monthMornings, type RuleMornings, type RulePoint, ruleCurve, yearMornings } from './rule/ruleCurve.ts'
export { letStandAtOfRule, ruleName } from './rule/ruleName.ts'
export { highestLetStandAt, lowestLetStandAt, ruleStepFrom, ruleSteps } from './rule/ruleSteps.ts'
// Siting
export { type BestSpots, type BestSpotsAsk, bestSpots, type Spot, type SpotGrid } from './siting/bestSpots.ts'
export { checkYard, type YardFault, type YardFaultCode, yardFaultCodes } from './siting/checkYard.ts'
export {
  type Betterment,
  type ClassReason,
  type Exposure,
  type ExposureClass,
  exposureClass,
} from './siting/exposureClass.ts'
export { clearanceM, type HazardSeen, hazardsAt, usualClearanceM } from './siting/hazards.ts'
export {
  type Focal,
  focalPx,
  type PhotoAngles,
  type PhotoAsk,
  type PhotoPoint,
  photoAngles,
} from './siting/photoAngles.ts'
export { BUILT_UP_RIM_M, OPEN_RIM_M, type RimAdvice, rimAdvice } from './siting/rimAdvice.ts'
export { isInRing, ringAreaM2 } from './siting/ring.ts'
export { type ObstacleSeen, obstacleSeen, type Skyline, skylineAt } from './siting/skyline.ts'
export { type Spacing, spacingRules } from './siting/spacingRules.ts'
export { type SurveyDue, surveyDue } from './siting/surveyDue.ts'
export { boardOf, distanceToObstacleM } from './siting/topEdges.ts'
export {
  dailyCatchShare,
  halfHourCatchShare,
  type Phase,
  type WindCaution,
  windAtRimMPerS,
  windCaution,
} from './siting/wind.ts'
export {
  type Hazard,
  type HazardKind,
  hazardKinds,
  isDrawn,
  type Obstacle,
  type ObstacleKind,
  type ObstacleShape,
  obstacleKinds,
  type YardGauge,
  type YardPlan,
  type YardPoint,
  type YardRing,
} from './siting/yard.ts'
export { coarsenPosition } from './space/coarsenPosition.ts'
// Space
export { bearingDeg, distanceM } from './space/distanceM.ts'
export { NearestIndex } from './space/nearest.ts'
export { type GeoRow, type PlaneRow, placeGauges } from './space/placeGauges.ts'
export {
  fromPlane,
  type GeoPoint,
  type PlanePoint,
  type Projection,
  projectionFor,
  toPlane,
} from './space/projection.ts'
export {
  type AreaRings,
  type Bounds,
  boundsOf,
  isInside,
  pointsInside,
  type Ring,
  ringsFromGeoJson,
} from './space/rings.ts'
// Statistics
export {
  crpsCensoredGaussian,
  crpsGaussian,
  crpsQuantiles,
  crpsSquaredCensoredGaussian,
  pinballLoss,
} from './stats/crps.ts'
export { incompleteGammaAbove, incompleteGammaBelow } from './stats/incompleteGamma.ts'
export { digamma, logGamma } from './stats/logGamma.ts'
export { logNormalCdf, normalCdf, normalInterval, normalPdf } from './stats/normalCdf.ts'
export { normalQuantile } from './stats/normalQuantile.ts'
export { quantile, quantileOfSorted } from './stats/quantile.ts'
export { normalDeviates, seededRandom } from './stats/seededRandom.ts'
// Units
export {
  inchesFromMm,
  inchesFromUm,
  mmFromInches,
  mmFromUm,
  umFromInches,
  umFromMm,
  umPerInch,
  umPerMm,
} from './units/convertUm.ts'
export { type AmountForm, decimalMarkOf, formatAmount, type Language } from './units/formatAmount.ts'
export { isWholeSteps, resolutionsUm, roundUm, usualResolutionUm } from './units/roundUm.ts'
export { hundredthInchUmFromMm, hundredthInchUmFromTenthsMm, tenthsMmFromUm, umFromTenthsMm } from './units/tenthsMm.ts'
// Urgent reports
export { clusterReports, linkKm, linkMinutes, type PlacedReport } from './urgent/clusterReports.ts'
export { type HailEnergy, hailEnergy } from './urgent/hailEnergy.ts'
export { type HailFallSpeeds, hailFallSpeedsMps } from './urgent/hailFall.ts'
export {
  type HailObject,
  type HailObjectName,
  hailObjectMm,
  hailObjectNames,
  hailObjects,
  hailSizeClass,
} from './urgent/hailObjects.ts'
export {
  magnitudeOf,
  type ObservedKind,
  type SeverityThresholds,
  type UrgentObservation,
  usualThresholds,
} from './urgent/observation.ts'
export { occasionFactor } from './urgent/occasion.ts'
export { type OtherReport, type Plausibility, plausibilityOf, type WitnessedReport } from './urgent/plausibility.ts'
export {
  type AgainstGuidance,
  againstGuidance,
  type GuidanceAmount,
  rainIntensity,
  rateMmPerH,
} from './urgent/rainRate.ts'
export { type RobustLine, robustLine } from './urgent/robustLine.ts'
export {
  type Severity,
  type SeverityBasis,
  type SeverityLevel,
  severityOrder,
  weighSeverity,
} from './urgent/severity.ts'
export { type StormTrack, stormTrack } from './urgent/stormTrack.ts'
export { type UrgentWeightAsk, urgentWeight } from './urgent/urgentWeight.ts'
// Variograms
export { type EmpiricalVariogram, empiricalVariogram } from './variogram/empirical.ts'
export { type FitVariogramAsk, fitVariogram } from './variogram/fitVariogram.ts'
export { type FittedVariogram, fitVariogramByLikelihood } from './variogram/fitVariogramByLikelihood.ts'
export { type Anisotropy, semivarianceMm2, type Variogram, type VariogramKind } from './variogram/variogram.ts'
