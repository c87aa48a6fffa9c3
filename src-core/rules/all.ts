import { cannotBeSetAside, unusedAllowance } from './allowance-rules.ts';
import { allowanceWithoutReason } from './allowance-without-reason.ts';
import { ambiguousUnit } from './ambiguous-unit.ts';
import { anchorMidRoute } from './anchor-mid-route.ts';
import { anchorOverloaded } from './anchor-overloaded.ts';
import { anchorVehicleSlides } from './anchor-vehicle-slides.ts';
import { anchorVehicleTooLight } from './anchor-vehicle-too-light.ts';
import { angleUnlikePlan } from './angle-unlike-plan.ts';
import { badDate } from './bad-date.ts';
import { badNumber } from './bad-number.ts';
import { bareEndInChain } from './bare-end-in-chain.ts';
import { bareEnd } from './bare-end.ts';
import { bareNumber } from './bare-number.ts';
import { barrelTooThin } from './barrel-too-thin.ts';
import { bendOverSmallPin } from './bend-over-small-pin.ts';
import { blockCannotMove } from './block-cannot-move.ts';
import { blockHeldElsewhere } from './block-held-elsewhere.ts';
import { blockLeftOut } from './block-left-out.ts';
import { blockOverloaded } from './block-overloaded.ts';
import { blockTooSmallForLine } from './block-too-small-for-line.ts';
import { blockUsedTwice } from './block-used-twice.ts';
import { braceBelowHead } from './brace-below-head.ts';
import { brakeHeatsLine } from './brake-heats-line.ts';
import { bridleNotInChain } from './bridle-not-in-chain.ts';
import { bridleTooWide } from './bridle-too-wide.ts';
import { buryTooShort } from './bury-too-short.ts';
import { carriesAbsentPiece } from './carries-absent-piece.ts';
import { carriesRetiredLine } from './carries-retired-line.ts';
import { chainClosesOnItself } from './chain-closes-on-itself.ts';
import { chainLongerThanReach } from './chain-longer-than-reach.ts';
import { chainWithoutAnchor } from './chain-without-anchor.ts';
import { chainWithoutRoute } from './chain-without-route.ts';
import { conflictMarker } from './conflict-marker.ts';
import { cutCloseToDamage } from './cut-close-to-damage.ts';
import { cutInManyPlaces } from './cut-in-many-places.ts';
import { cutThroughSplice } from './cut-through-splice.ts';
import { cutTwice } from './cut-twice.ts';
import { damageInSplice } from './damage-in-splice.ts';
import { damageLeftInService } from './damage-left-in-service.ts';
import { damageNotMeasured } from './damage-not-measured.ts';
import { damageToClean } from './damage-to-clean.ts';
import { dateOutOfOrder } from './date-out-of-order.ts';
import { deadmanDepthOutsideTable } from './deadman-depth-outside-table.ts';
import { deadmanTooShort } from './deadman-too-short.ts';
import { deadmanTooSlender } from './deadman-too-slender.ts';
import { deeSideLoaded } from './dee-side-loaded.ts';
import { designFactorLow } from './design-factor-low.ts';
import { doesNotFit } from './does-not-fit.ts';
import { drumEndInChain } from './drum-end-in-chain.ts';
import { drumImpossible } from './drum-impossible.ts';
import { drumNearlyFull } from './drum-nearly-full.ts';
import { drumOverfull } from './drum-overfull.ts';
import { endNotCut } from './end-not-cut.ts';
import { endStandsAndMoves } from './end-stands-and-moves.ts';
import { endUsedTwice } from './end-used-twice.ts';
import { entryAfterRetired } from './entry-after-retired.ts';
import { entryBeforeFitted } from './entry-before-fitted.ts';
import { entryNotYet } from './entry-not-yet.ts';
import { eyeTooTight } from './eye-too-tight.ts';
import { fairleadDamaged } from './fairlead-damaged.ts';
import { fewerPartsThanEstimate } from './fewer-parts-than-estimate.ts';
import { gearDamaged } from './gear-damaged.ts';
import { gradeTooSteep } from './grade-too-steep.ts';
import { holdingAbovePublished } from './holding-above-published.ts';
import { holdingWithoutSource } from './holding-without-source.ts';
import { hookLatchBroken } from './hook-latch-broken.ts';
import { inspectionOverdue } from './inspection-overdue.ts';
import { joinedToItself } from './joined-to-itself.ts';
import { joinsMoreThanTwo } from './joins-more-than-two.ts';
import { jointDrawnToBlock } from './joint-drawn-to-block.ts';
import { keepWrapsLost } from './keep-wraps-lost.ts';
import { kineticInWinchChain } from './kinetic-in-winch-chain.ts';
import { kitLacksGear } from './kit-lacks-gear.ts';
import { kitLacksGloves } from './kit-lacks-gloves.ts';
import { kitLacksThimble } from './kit-lacks-thimble.ts';
import { kitLacksTool } from './kit-lacks-tool.ts';
import { knotInLine } from './knot-in-line.ts';
import { limitAssumedFromBreaking } from './limit-assumed-from-breaking.ts';
import { limitFromTable } from './limit-from-table.ts';
import { lineFactorTooLow } from './line-factor-too-low.ts';
import { lineHeated } from './line-heated.ts';
import { lineNotOnWinch } from './line-not-on-winch.ts';
import { lineOnTwoDrums } from './line-on-two-drums.ts';
import { lineOverloadedByPull } from './line-overloaded-by-pull.ts';
import { lineOverloaded } from './line-overloaded.ts';
import { lineToRetire } from './line-to-retire.ts';
import { lineWeakerThanWinch } from './line-weaker-than-winch.ts';
import { linkAboveBreaking } from './link-above-breaking.ts';
import { linkAboveFactor } from './link-above-factor.ts';
import { linkAboveLimit } from './link-above-limit.ts';
import { linkOverloadedByPull } from './link-overloaded-by-pull.ts';
import { loadLighterThanMass } from './load-lighter-than-mass.ts';
import { loadNotPulled } from './load-not-pulled.ts';
import { lossAbovePublished } from './loss-above-published.ts';
import { longerPieceDropped } from './longer-piece-dropped.ts';
import { lugOutboard } from './lug-outboard.ts';
import { materialUnlikeConstruction } from './material-unlike-construction.ts';
import { mendedNothing } from './mended-nothing.ts';
import { missingBlock } from './missing-block.ts';
import { missingDate } from './missing-date.ts';
import { missingFact } from './missing-fact-rule.ts';
import { missingValue } from './missing-value.ts';
import { mixedCompound } from './mixed-compound.ts';
import { moreStrandsThanLine } from './more-strands-than-line.ts';
import { nameDeclaredTwice } from './name-declared-twice.ts';
import { nameOfAnotherKind } from './name-of-another-kind.ts';
import { nameOfMixedLetters } from './name-of-mixed-letters.ts';
import { nestedTooDeep } from './nested-too-deep.ts';
import { noDamperInKit } from './no-damper-in-kit.ts';
import { nothingJoinsEyes } from './nothing-joins-eyes.ts';
import { nothingRoundAnchor } from './nothing-round-anchor.ts';
import { outBelowReach } from './out-below-reach.ts';
import { outdoorsTooLong } from './outdoors-too-long.ts';
import { overlappingSplices } from './overlapping-splices.ts';
import { peopleTooClose } from './people-too-close.ts';
import { picketsInWrongSoil } from './pickets-in-wrong-soil.ts';
import { pinDiffersFromTable } from './pin-differs-from-table.ts';
import { pinThinnerThanBody } from './pin-thinner-than-body.ts';
import { pointFactorLow } from './point-factor-low.ts';
import { pointOverloaded } from './point-overloaded.ts';
import { positionBeyondEnd } from './position-beyond-end.ts';
import { practiceBeyondPublished } from './practice-beyond-published.ts';
import { practiceGivenTwice } from './practice-given-twice.ts';
import { practiceWithoutSource } from './practice-without-source.ts';
import { pullLongerThanOneRun } from './pull-longer-than-one-run.ts';
import { pullOffSquare } from './pull-off-square.ts';
import { pullOnHighLayer } from './pull-on-high-layer.ts';
import { pullThroughOtherWinch } from './pull-through-other-winch.ts';
import { pullWithoutAnchor } from './pull-without-anchor.ts';
import { pullWithoutLoad } from './pull-without-load.ts';
import { ratedLayerAbsent } from './rated-layer-absent.ts';
import { ratedLayerNotFirst } from './rated-layer-not-first.ts';
import { ratingAboveTable } from './rating-above-table.ts';
import { ratingBeyondSize } from './rating-beyond-size.ts';
import { ratingMixedUp } from './rating-mixed-up.ts';
import { reachTooShort } from './reach-too-short.ts';
import { reachUnlikePlan } from './reach-unlike-plan.ts';
import { repairLeavesDamage } from './repair-leaves-damage.ts';
import { repairOutsideChain } from './repair-outside-chain.ts';
import { repeatedStatement } from './repeated-statement.ts';
import { reservedName } from './reserved-name.ts';
import { resistanceBelowGrade } from './resistance-below-grade.ts';
import { resistanceBelowTables } from './resistance-below-tables.ts';
import { resistanceWithoutSource } from './resistance-without-source.ts';
import { retiredPieceInKit } from './retired-piece-in-kit.ts';
import { retiredPieceUsed } from './retired-piece-used.ts';
import { ropeOnRope } from './rope-on-rope.ts';
import { routesNotJoined } from './routes-not-joined.ts';
import type { Rule } from './rule.ts';
import { samePlace } from './same-place.ts';
import { saysTwoThings } from './says-two-things.ts';
import { sealingTermsMissing } from './sealing-terms-missing.ts';
import { severityCannotBeLowered } from './severity-cannot-be-lowered.ts';
import { shackleSmallerThanLine } from './shackle-smaller-than-line.ts';
import { sheaveTooSmall } from './sheave-too-small.ts';
import { sideLoadOver90 } from './side-load-over-90.ts';
import { sizeNotInTable } from './size-not-in-table.ts';
import { spliceLongerThanPiece } from './splice-longer-than-piece.ts';
import { spliceNotStitched } from './splice-not-stitched.ts';
import { spooledSlack } from './spooled-slack.ts';
import { strapAsChoker } from './strap-as-choker.ts';
import { strapBunched } from './strap-bunched.ts';
import { strapDamaged } from './strap-damaged.ts';
import { strapNotRoundAnchor } from './strap-not-round-anchor.ts';
import { strayBrace } from './stray-brace.ts';
import { strayCharacter } from './stray-character.ts';
import { strongerThanItsFibre } from './stronger-than-its-fibre.ts';
import { taperLongerThanBury } from './taper-longer-than-bury.ts';
import { taperMissing } from './taper-missing.ts';
import { taperTooLong } from './taper-too-long.ts';
import { taperTooShort } from './taper-too-short.ts';
import { temporarySpliceOverdue } from './temporary-splice-overdue.ts';
import { temporarySplice } from './temporary-splice.ts';
import { thimbleTooSmall } from './thimble-too-small.ts';
import { tuckedOutsideHmpe } from './tucked-outside-hmpe.ts';
import { unclosedBrace } from './unclosed-brace.ts';
import { unclosedQuote } from './unclosed-quote.ts';
import { unexpectedBlock } from './unexpected-block.ts';
import { unexpectedValue } from './unexpected-value.ts';
import { unknownBlock } from './unknown-block.ts';
import { unknownName } from './unknown-name.ts';
import { unknownPiece } from './unknown-piece.ts';
import { unknownRule } from './unknown-rule.ts';
import { unknownStatement } from './unknown-statement.ts';
import { unknownUnit } from './unknown-unit.ts';
import { unknownWord } from './unknown-word.ts';
import { unmarkedGear } from './unmarked-gear.ts';
import { unratedGear } from './unrated-gear.ts';
import { unratedPoint } from './unrated-point.ts';
import { unusedPiece } from './unused-piece.ts';
import { useLoop } from './use-loop.ts';
import { useMissing } from './use-missing.ts';
import { useOutside } from './use-outside.ts';
import { valueOutOfRange } from './value-out-of-range.ts';
import { washingOverdue } from './washing-overdue.ts';
import { weakLinkAtAnchor } from './weak-link-at-anchor.ts';
import { winchAboveWorkingLimit } from './winch-above-working-limit.ts';
import { winchTooWeakForPull } from './winch-too-weak-for-pull.ts';
import { wrapsBelowPractice } from './wraps-below-practice.ts';
import { wrapsLostAtOut } from './wraps-lost-at-out.ts';
import { wrapsLostAtReach } from './wraps-lost-at-reach.ts';
import { wrongDimension } from './wrong-dimension.ts';

/** Every rule, by name. */
export const rules: readonly Rule[] = [
  allowanceWithoutReason,
  ambiguousUnit,
  anchorMidRoute,
  anchorOverloaded,
  anchorVehicleSlides,
  anchorVehicleTooLight,
  angleUnlikePlan,
  badDate,
  badNumber,
  bareEnd,
  bareEndInChain,
  bareNumber,
  barrelTooThin,
  bendOverSmallPin,
  blockCannotMove,
  blockHeldElsewhere,
  blockLeftOut,
  blockOverloaded,
  blockTooSmallForLine,
  blockUsedTwice,
  braceBelowHead,
  brakeHeatsLine,
  bridleNotInChain,
  bridleTooWide,
  buryTooShort,
  cannotBeSetAside,
  carriesAbsentPiece,
  carriesRetiredLine,
  chainClosesOnItself,
  chainLongerThanReach,
  chainWithoutAnchor,
  chainWithoutRoute,
  conflictMarker,
  cutCloseToDamage,
  cutInManyPlaces,
  cutThroughSplice,
  cutTwice,
  damageInSplice,
  damageLeftInService,
  damageNotMeasured,
  damageToClean,
  dateOutOfOrder,
  deadmanDepthOutsideTable,
  deadmanTooShort,
  deadmanTooSlender,
  deeSideLoaded,
  designFactorLow,
  doesNotFit,
  drumEndInChain,
  drumImpossible,
  drumNearlyFull,
  drumOverfull,
  endNotCut,
  endStandsAndMoves,
  endUsedTwice,
  entryAfterRetired,
  entryBeforeFitted,
  entryNotYet,
  eyeTooTight,
  fairleadDamaged,
  fewerPartsThanEstimate,
  gearDamaged,
  gradeTooSteep,
  holdingAbovePublished,
  holdingWithoutSource,
  hookLatchBroken,
  inspectionOverdue,
  joinedToItself,
  joinsMoreThanTwo,
  jointDrawnToBlock,
  keepWrapsLost,
  kineticInWinchChain,
  kitLacksGear,
  kitLacksGloves,
  kitLacksThimble,
  kitLacksTool,
  knotInLine,
  limitAssumedFromBreaking,
  limitFromTable,
  lineFactorTooLow,
  lineHeated,
  lineNotOnWinch,
  lineOnTwoDrums,
  lineOverloaded,
  lineOverloadedByPull,
  lineToRetire,
  lineWeakerThanWinch,
  linkAboveBreaking,
  linkAboveFactor,
  linkAboveLimit,
  linkOverloadedByPull,
  loadLighterThanMass,
  loadNotPulled,
  longerPieceDropped,
  lossAbovePublished,
  lugOutboard,
  materialUnlikeConstruction,
  mendedNothing,
  missingBlock,
  missingDate,
  missingFact,
  missingValue,
  mixedCompound,
  moreStrandsThanLine,
  nameDeclaredTwice,
  nameOfAnotherKind,
  nameOfMixedLetters,
  nestedTooDeep,
  noDamperInKit,
  nothingJoinsEyes,
  nothingRoundAnchor,
  outBelowReach,
  outdoorsTooLong,
  overlappingSplices,
  peopleTooClose,
  picketsInWrongSoil,
  pinDiffersFromTable,
  pinThinnerThanBody,
  pointFactorLow,
  pointOverloaded,
  positionBeyondEnd,
  practiceBeyondPublished,
  practiceGivenTwice,
  practiceWithoutSource,
  pullLongerThanOneRun,
  pullOffSquare,
  pullOnHighLayer,
  pullThroughOtherWinch,
  pullWithoutAnchor,
  pullWithoutLoad,
  ratedLayerAbsent,
  ratedLayerNotFirst,
  ratingAboveTable,
  ratingBeyondSize,
  ratingMixedUp,
  reachTooShort,
  reachUnlikePlan,
  repairLeavesDamage,
  repairOutsideChain,
  repeatedStatement,
  reservedName,
  resistanceBelowGrade,
  resistanceBelowTables,
  resistanceWithoutSource,
  retiredPieceInKit,
  retiredPieceUsed,
  ropeOnRope,
  routesNotJoined,
  samePlace,
  saysTwoThings,
  sealingTermsMissing,
  severityCannotBeLowered,
  shackleSmallerThanLine,
  sheaveTooSmall,
  sideLoadOver90,
  sizeNotInTable,
  spliceLongerThanPiece,
  spliceNotStitched,
  spooledSlack,
  strapAsChoker,
  strapBunched,
  strapDamaged,
  strapNotRoundAnchor,
  strayBrace,
  strayCharacter,
  strongerThanItsFibre,
  taperLongerThanBury,
  taperMissing,
  taperTooLong,
  taperTooShort,
  temporarySplice,
  temporarySpliceOverdue,
  thimbleTooSmall,
  tuckedOutsideHmpe,
  unclosedBrace,
  unclosedQuote,
  unexpectedBlock,
  unexpectedValue,
  unknownBlock,
  unknownName,
  unknownPiece,
  unknownRule,
  unknownStatement,
  unknownUnit,
  unknownWord,
  unmarkedGear,
  unratedGear,
  unratedPoint,
  unusedAllowance,
  unusedPiece,
  useLoop,
  useMissing,
  useOutside,
  valueOutOfRange,
  washingOverdue,
  weakLinkAtAnchor,
  winchAboveWorkingLimit,
  winchTooWeakForPull,
  wrapsBelowPractice,
  wrapsLostAtOut,
  wrapsLostAtReach,
  wrongDimension,
];

const byName = new Map(rules.map((r) => [r.name, r]));
export const ruleNamed = (name: string): Rule | undefined => byName.get(name);
