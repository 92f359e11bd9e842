// The list of rules, in the order in which they are judged and shown. One line a rule.
import { acceptedStrain } from './accepted-strain.ts';
import { additions } from './additions.ts';
import { brewDayRule } from './brew-day.ts';
import { brewWindow } from './brew-window.ts';
import { checkWork } from './check-work.ts';
import { conditioningRoom } from './conditioning-room.ts';
import { darkToLight } from './dark-to-light.ts';
import { deliveries } from './deliveries.ts';
import { drawLimit } from './draw-limit.ts';
import { dryHopped } from './dry-hopped.ts';
import { factsStay } from './facts-stay.ts';
import { firstIntoStrong } from './first-into-strong.ts';
import { fixedDay } from './fixed-day.ts';
import { forbiddenSource } from './forbidden-source.ts';
import { freshness } from './freshness.ts';
import { generationLimitRule } from './generation-limit.ts';
import { gravityCeiling } from './gravity-ceiling.ts';
import { harvestWork } from './harvest-work.ts';
import { hoppyToDelicate } from './hoppy-to-delicate.ts';
import { jarWork } from './jar-work.ts';
import { kettleSoured } from './kettle-soured.ts';
import { kettleTurns } from './kettle-turns.ts';
import { lateLimit } from './late-limit.ts';
import { lateness } from './lateness.ts';
import { laterGeneration } from './later-generation.ts';
import { leftOut } from './left-out.ts';
import { lessLikedStrain } from './less-liked-strain.ts';
import { mixedCulture } from './mixed-culture.ts';
import { moved } from './moved.ts';
import { noSlack } from './no-slack.ts';
import { oldSlurry } from './old-slurry.ts';
import { overPitch } from './over-pitch.ts';
import { packs } from './packs.ts';
import { pinnedSource } from './pinned-source.ts';
import { pitchRisk } from './pitch-risk.ts';
import type { Rule } from './rule.ts';
import { seasonEndJar } from './season-end-jar.ts';
import { shelfSpace } from './shelf-space.ts';
import { sourceChanged } from './source-changed.ts';
import { starterDay } from './starter-day.ts';
import { starterGear } from './starter-gear.ts';
import { starterWork } from './starter-work.ts';
import { starterWort } from './starter-wort.ts';
import { storageLimit } from './storage-limit.ts';
import { strainTemperature } from './strain-temperature.ts';
import { strongToLight } from './strong-to-light.ts';
import { suspect } from './suspect.ts';
import { tankConflict } from './tank-conflict.ts';
import { tankFill } from './tank-fill.ts';
import { tankTemperature } from './tank-temperature.ts';
import { thinHarvest } from './thin-harvest.ts';
import { thinYeast } from './thin-yeast.ts';
import { viabilityFloor } from './viability-floor.ts';
import { warmToCold } from './warm-to-cold.ts';
import { weakYeast } from './weak-yeast.ts';
import { yeastForward } from './yeast-forward.ts';

export type { Rule } from './rule.ts';

export const RULES: readonly Rule[] = [
  brewDayRule,
  kettleTurns,
  brewWindow,
  lateLimit,
  fixedDay,
  pinnedSource,
  forbiddenSource,
  tankConflict,
  tankFill,
  tankTemperature,
  conditioningRoom,
  yeastForward,
  acceptedStrain,
  strainTemperature,
  drawLimit,
  shelfSpace,
  gravityCeiling,
  kettleSoured,
  mixedCulture,
  dryHopped,
  additions,
  generationLimitRule,
  storageLimit,
  viabilityFloor,
  starterGear,
  starterDay,
  factsStay,
  suspect,
  leftOut,
  laterGeneration,
  weakYeast,
  oldSlurry,
  strongToLight,
  darkToLight,
  hoppyToDelicate,
  warmToCold,
  firstIntoStrong,
  packs,
  deliveries,
  starterWort,
  harvestWork,
  jarWork,
  starterWork,
  checkWork,
  lateness,
  freshness,
  lessLikedStrain,
  overPitch,
  noSlack,
  thinYeast,
  thinHarvest,
  seasonEndJar,
  moved,
  sourceChanged,
  pitchRisk,
];
