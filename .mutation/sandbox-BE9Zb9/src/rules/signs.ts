/** What the grower saw on the plants, and what it does to the rate. */
// @ts-nocheck
function stryNS_9fa48() {
  var g = typeof globalThis === 'object' && globalThis && globalThis.Math === Math && globalThis || new Function("return this")();
  var ns = g.__stryker__ || (g.__stryker__ = {});
  if (ns.activeMutant === undefined && g.process && g.process.env && g.process.env.__STRYKER_ACTIVE_MUTANT__) {
    ns.activeMutant = g.process.env.__STRYKER_ACTIVE_MUTANT__;
  }
  function retrieveNS() {
    return ns;
  }
  stryNS_9fa48 = retrieveNS;
  return retrieveNS();
}
stryNS_9fa48();
function stryCov_9fa48() {
  var ns = stryNS_9fa48();
  var cov = ns.mutantCoverage || (ns.mutantCoverage = {
    static: {},
    perTest: {}
  });
  function cover() {
    var c = cov.static;
    if (ns.currentTestId) {
      c = cov.perTest[ns.currentTestId] = cov.perTest[ns.currentTestId] || {};
    }
    var a = arguments;
    for (var i = 0; i < a.length; i++) {
      c[a[i]] = (c[a[i]] || 0) + 1;
    }
  }
  stryCov_9fa48 = cover;
  cover.apply(null, arguments);
}
function stryMutAct_9fa48(id) {
  var ns = stryNS_9fa48();
  function isActive(id) {
    if (ns.activeMutant === id) {
      if (ns.hitCount !== void 0 && ++ns.hitCount > ns.hitLimit) {
        throw new Error('Stryker: Hit count limit reached (' + ns.hitCount + ')');
      }
      return true;
    }
    return false;
  }
  stryMutAct_9fa48 = isActive;
  return isActive(id);
}
import type { Crop, StageName } from "../crops/index.js";
import { addDays, type Day, type DaySpan, earlier, later, within } from "../dates.js";
import type { Planting, SignSeen } from "../garden/index.js";
import { stageOn, type StageSpan } from "../stages/index.js";
import { byText } from "../values.js";
import type { FedSpan } from "./match.js";
import type { FeedRule } from "./rule.js";

/** A row of `signs.yaml`. */
export interface Sign {
  readonly key: string;
  readonly name: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly first_advice: readonly string[];
  /** What trials of watering and mulch found; of all its crops where none are named. */
  readonly water_evidence?: readonly WaterEvidence[];
  /** By crop group: what comes before the other advice. */
  readonly first_in_group?: Readonly<Record<string, readonly string[]>>;
  /** -1, 0 or 1. */
  readonly level_steps: number;
  readonly level_factor: number;
  readonly stages: readonly StageName[];
  readonly holds_days: number;
  /** What it opens where it is seen after the feeding of the planting has ended. */
  readonly reopens?: {
    readonly feedings: number;
    readonly within_days: number;
  };
  readonly reason: string;
  /** Said only where the rate changes. */
  readonly change_reason?: string;
  readonly source: string;
}
interface WaterEvidence {
  readonly crops?: readonly string[];
  readonly says: string;
  readonly source: string;
}
export interface Sighting {
  readonly seen: SignSeen;
  readonly sign: Sign;
  /** Whether it is known on this crop; where it is not, it changes nothing. */
  readonly isKnown: boolean;
}

/** The signs seen on one planting, in order of their days. */
export function sightingsOn(planting: Planting, crop: Crop | undefined, seen: readonly SignSeen[], signs: readonly Sign[]): Sighting[] {
  if (stryMutAct_9fa48("568")) {
    {}
  } else {
    stryCov_9fa48("568");
    return stryMutAct_9fa48("570") ? seen.flatMap(s => {
      const sign = signs.find(row => row.key === s.sign);
      return sign === undefined ? [] : [{
        seen: s,
        sign,
        isKnown: crop === undefined || isKnownOn(sign, crop)
      }];
    }).sort((a, b) => byText(a.seen.on, b.seen.on)) : stryMutAct_9fa48("569") ? seen.filter(s => s.planting === planting.id).flatMap(s => {
      const sign = signs.find(row => row.key === s.sign);
      return sign === undefined ? [] : [{
        seen: s,
        sign,
        isKnown: crop === undefined || isKnownOn(sign, crop)
      }];
    }) : (stryCov_9fa48("569", "570"), seen.filter(stryMutAct_9fa48("571") ? () => undefined : (stryCov_9fa48("571"), s => stryMutAct_9fa48("574") ? s.planting !== planting.id : stryMutAct_9fa48("573") ? false : stryMutAct_9fa48("572") ? true : (stryCov_9fa48("572", "573", "574"), s.planting === planting.id))).flatMap(s => {
      if (stryMutAct_9fa48("575")) {
        {}
      } else {
        stryCov_9fa48("575");
        const sign = signs.find(stryMutAct_9fa48("576") ? () => undefined : (stryCov_9fa48("576"), row => stryMutAct_9fa48("579") ? row.key !== s.sign : stryMutAct_9fa48("578") ? false : stryMutAct_9fa48("577") ? true : (stryCov_9fa48("577", "578", "579"), row.key === s.sign)));
        return (stryMutAct_9fa48("582") ? sign !== undefined : stryMutAct_9fa48("581") ? false : stryMutAct_9fa48("580") ? true : (stryCov_9fa48("580", "581", "582"), sign === undefined)) ? stryMutAct_9fa48("583") ? ["Stryker was here"] : (stryCov_9fa48("583"), []) : stryMutAct_9fa48("584") ? [] : (stryCov_9fa48("584"), [stryMutAct_9fa48("585") ? {} : (stryCov_9fa48("585"), {
          seen: s,
          sign,
          isKnown: stryMutAct_9fa48("588") ? crop === undefined && isKnownOn(sign, crop) : stryMutAct_9fa48("587") ? false : stryMutAct_9fa48("586") ? true : (stryCov_9fa48("586", "587", "588"), (stryMutAct_9fa48("590") ? crop !== undefined : stryMutAct_9fa48("589") ? false : (stryCov_9fa48("589", "590"), crop === undefined)) || isKnownOn(sign, crop))
        })]);
      }
    }).sort(stryMutAct_9fa48("591") ? () => undefined : (stryCov_9fa48("591"), (a, b) => byText(a.seen.on, b.seen.on))));
  }
}
export function isKnownOn(sign: Sign, crop: Crop): boolean {
  if (stryMutAct_9fa48("592")) {
    {}
  } else {
    stryCov_9fa48("592");
    if (stryMutAct_9fa48("595") ? sign.crops === undefined || sign.groups === undefined : stryMutAct_9fa48("594") ? false : stryMutAct_9fa48("593") ? true : (stryCov_9fa48("593", "594", "595"), (stryMutAct_9fa48("597") ? sign.crops !== undefined : stryMutAct_9fa48("596") ? true : (stryCov_9fa48("596", "597"), sign.crops === undefined)) && (stryMutAct_9fa48("599") ? sign.groups !== undefined : stryMutAct_9fa48("598") ? true : (stryCov_9fa48("598", "599"), sign.groups === undefined)))) return stryMutAct_9fa48("600") ? false : (stryCov_9fa48("600"), true);
    return stryMutAct_9fa48("603") ? (sign.crops ?? []).includes(crop.key) && (sign.groups ?? []).includes(crop.group) : stryMutAct_9fa48("602") ? false : stryMutAct_9fa48("601") ? true : (stryCov_9fa48("601", "602", "603"), (stryMutAct_9fa48("604") ? sign.crops && [] : (stryCov_9fa48("604"), sign.crops ?? (stryMutAct_9fa48("605") ? ["Stryker was here"] : (stryCov_9fa48("605"), [])))).includes(crop.key) || (stryMutAct_9fa48("606") ? sign.groups && [] : (stryCov_9fa48("606"), sign.groups ?? (stryMutAct_9fa48("607") ? ["Stryker was here"] : (stryCov_9fa48("607"), [])))).includes(crop.group));
  }
}

/**
 * What the signs multiply the rate by on a day: one step for each different sign that still holds,
 * and never so much that the rule's highest rate is passed.
 */
export function signLevel(sightings: readonly Sighting[], planting: Planting, spans: readonly StageSpan[], day: Day, rule: FeedRule): number {
  if (stryMutAct_9fa48("608")) {
    {}
  } else {
    stryCov_9fa48("608");
    const stage = stryMutAct_9fa48("609") ? stageOn(spans, day).stage : (stryCov_9fa48("609"), stageOn(spans, day)?.stage);
    const holding = new Map(stryMutAct_9fa48("610") ? signsHolding(sightings, day).map(({
      sign
    }) => [sign.key, stepOf(sign)]) : (stryCov_9fa48("610"), signsHolding(sightings, day).filter(stryMutAct_9fa48("611") ? () => undefined : (stryCov_9fa48("611"), ({
      sign
    }) => stryMutAct_9fa48("614") ? stage !== undefined || sign.stages.includes(stage) : stryMutAct_9fa48("613") ? false : stryMutAct_9fa48("612") ? true : (stryCov_9fa48("612", "613", "614"), (stryMutAct_9fa48("616") ? stage === undefined : stryMutAct_9fa48("615") ? true : (stryCov_9fa48("615", "616"), stage !== undefined)) && sign.stages.includes(stage)))).map(stryMutAct_9fa48("617") ? () => undefined : (stryCov_9fa48("617"), ({
      sign
    }) => stryMutAct_9fa48("618") ? [] : (stryCov_9fa48("618"), [sign.key, stepOf(sign)])))));
    const wished = (stryMutAct_9fa48("619") ? [] : (stryCov_9fa48("619"), [...holding.values()])).reduce(stryMutAct_9fa48("620") ? () => undefined : (stryCov_9fa48("620"), (product, factor) => stryMutAct_9fa48("621") ? product / factor : (stryCov_9fa48("621"), product * factor)), 1);
    return stryMutAct_9fa48("622") ? Math.max(wished, Math.max(1, rule.highestRateMlPerL / baseRate(planting, rule))) : (stryCov_9fa48("622"), Math.min(wished, stryMutAct_9fa48("623") ? Math.min(1, rule.highestRateMlPerL / baseRate(planting, rule)) : (stryCov_9fa48("623"), Math.max(1, stryMutAct_9fa48("624") ? rule.highestRateMlPerL * baseRate(planting, rule) : (stryCov_9fa48("624"), rule.highestRateMlPerL / baseRate(planting, rule))))));
  }
}

/** Those that hold on a day, in order of their days. */
export function signsHolding(sightings: readonly Sighting[], day: Day): Sighting[] {
  if (stryMutAct_9fa48("625")) {
    {}
  } else {
    stryCov_9fa48("625");
    return stryMutAct_9fa48("626") ? sightings : (stryCov_9fa48("626"), sightings.filter(stryMutAct_9fa48("627") ? () => undefined : (stryCov_9fa48("627"), ({
      seen,
      sign,
      isKnown
    }) => stryMutAct_9fa48("630") ? isKnown && seen.on <= day || day <= heldTo(seen, sign) : stryMutAct_9fa48("629") ? false : stryMutAct_9fa48("628") ? true : (stryCov_9fa48("628", "629", "630"), (stryMutAct_9fa48("632") ? isKnown || seen.on <= day : stryMutAct_9fa48("631") ? true : (stryCov_9fa48("631", "632"), isKnown && (stryMutAct_9fa48("635") ? seen.on > day : stryMutAct_9fa48("634") ? seen.on < day : stryMutAct_9fa48("633") ? true : (stryCov_9fa48("633", "634", "635"), seen.on <= day)))) && (stryMutAct_9fa48("638") ? day > heldTo(seen, sign) : stryMutAct_9fa48("637") ? day < heldTo(seen, sign) : stryMutAct_9fa48("636") ? true : (stryCov_9fa48("636", "637", "638"), day <= heldTo(seen, sign)))))));
  }
}

/** Seen outside the season, and no longer held to when that begins. */
export function isOver({
  seen,
  sign
}: Sighting, season: DaySpan): boolean {
  if (stryMutAct_9fa48("639")) {
    {}
  } else {
    stryCov_9fa48("639");
    return stryMutAct_9fa48("642") ? heldTo(seen, sign) < season.from && seen.on > season.to : stryMutAct_9fa48("641") ? false : stryMutAct_9fa48("640") ? true : (stryCov_9fa48("640", "641", "642"), (stryMutAct_9fa48("645") ? heldTo(seen, sign) >= season.from : stryMutAct_9fa48("644") ? heldTo(seen, sign) <= season.from : stryMutAct_9fa48("643") ? false : (stryCov_9fa48("643", "644", "645"), heldTo(seen, sign) < season.from)) || (stryMutAct_9fa48("648") ? seen.on <= season.to : stryMutAct_9fa48("647") ? seen.on >= season.to : stryMutAct_9fa48("646") ? false : (stryCov_9fa48("646", "647", "648"), seen.on > season.to)));
  }
}
function stepOf(sign: Sign): number {
  if (stryMutAct_9fa48("649")) {
    {}
  } else {
    stryCov_9fa48("649");
    return sign.level_factor ** Math.abs(sign.level_steps);
  }
}
function baseRate(planting: Planting, rule: FeedRule): number {
  if (stryMutAct_9fa48("650")) {
    {}
  } else {
    stryCov_9fa48("650");
    return stryMutAct_9fa48("651") ? (planting.rateMlPerL ?? rule.rateMlPerL) / planting.level : (stryCov_9fa48("651"), (stryMutAct_9fa48("652") ? planting.rateMlPerL && rule.rateMlPerL : (stryCov_9fa48("652"), planting.rateMlPerL ?? rule.rateMlPerL)) * planting.level);
  }
}
function heldTo(seen: SignSeen, sign: Sign): Day {
  if (stryMutAct_9fa48("653")) {
    {}
  } else {
    stryCov_9fa48("653");
    return addDays(seen.on, sign.holds_days);
  }
}

/** What a sighting does to the feed of its planting. */
export type SignEffect = {
  readonly kind: "unknown-on-crop" | "not-fed" | "same-rate";
} | {
  readonly kind: "at-highest";
  readonly rateMlPerL: number;
}
/** Until then the planting is in no stage that the sign speaks of, or is not fed in any. */ | {
  readonly kind: "no-stage" | "no-feeding";
  readonly until: Day;
} | {
  readonly kind: "rate";
  readonly fromMlPerL: number;
  readonly toMlPerL: number;
  readonly isHighest: boolean;
  readonly from: Day;
  readonly until: Day;
};

/**
 * What one sighting changes, beside those before it.
 *
 * @param fed the spans in which the planting is fed, with their rules
 * @param fedDays the days on which it is fed
 */
export function signEffect({
  seen,
  sign,
  isKnown
}: Sighting, sightings: readonly Sighting[], planting: Planting, spans: readonly StageSpan[], fed: readonly FedSpan[], fedDays: readonly Day[]): SignEffect {
  if (stryMutAct_9fa48("654")) {
    {}
  } else {
    stryCov_9fa48("654");
    if (stryMutAct_9fa48("657") ? false : stryMutAct_9fa48("656") ? true : stryMutAct_9fa48("655") ? isKnown : (stryCov_9fa48("655", "656", "657"), !isKnown)) return stryMutAct_9fa48("658") ? {} : (stryCov_9fa48("658"), {
      kind: stryMutAct_9fa48("659") ? "" : (stryCov_9fa48("659"), "unknown-on-crop")
    });
    if (stryMutAct_9fa48("662") ? fed.length !== 0 : stryMutAct_9fa48("661") ? false : stryMutAct_9fa48("660") ? true : (stryCov_9fa48("660", "661", "662"), fed.length === 0)) return stryMutAct_9fa48("663") ? {} : (stryCov_9fa48("663"), {
      kind: stryMutAct_9fa48("664") ? "" : (stryCov_9fa48("664"), "not-fed")
    });
    if (stryMutAct_9fa48("667") ? stepOf(sign) !== 1 : stryMutAct_9fa48("666") ? false : stryMutAct_9fa48("665") ? true : (stryCov_9fa48("665", "666", "667"), stepOf(sign) === 1)) return stryMutAct_9fa48("668") ? {} : (stryCov_9fa48("668"), {
      kind: stryMutAct_9fa48("669") ? "" : (stryCov_9fa48("669"), "same-rate")
    });
    const until = heldTo(seen, sign);
    const inStage = stryMutAct_9fa48("670") ? spans : (stryCov_9fa48("670"), spans.filter(stryMutAct_9fa48("671") ? () => undefined : (stryCov_9fa48("671"), ({
      stage
    }) => sign.stages.includes(stage))));
    if (stryMutAct_9fa48("674") ? false : stryMutAct_9fa48("673") ? true : stryMutAct_9fa48("672") ? inStage.some(span => span.from <= until && seen.on <= span.to) : (stryCov_9fa48("672", "673", "674"), !(stryMutAct_9fa48("675") ? inStage.every(span => span.from <= until && seen.on <= span.to) : (stryCov_9fa48("675"), inStage.some(stryMutAct_9fa48("676") ? () => undefined : (stryCov_9fa48("676"), span => stryMutAct_9fa48("679") ? span.from <= until || seen.on <= span.to : stryMutAct_9fa48("678") ? false : stryMutAct_9fa48("677") ? true : (stryCov_9fa48("677", "678", "679"), (stryMutAct_9fa48("682") ? span.from > until : stryMutAct_9fa48("681") ? span.from < until : stryMutAct_9fa48("680") ? true : (stryCov_9fa48("680", "681", "682"), span.from <= until)) && (stryMutAct_9fa48("685") ? seen.on > span.to : stryMutAct_9fa48("684") ? seen.on < span.to : stryMutAct_9fa48("683") ? true : (stryCov_9fa48("683", "684", "685"), seen.on <= span.to))))))))) return stryMutAct_9fa48("686") ? {} : (stryCov_9fa48("686"), {
      kind: stryMutAct_9fa48("687") ? "" : (stryCov_9fa48("687"), "no-stage"),
      until
    });
    const first = firstChange(seen.on, until, inStage, fed);
    const isFed = stryMutAct_9fa48("688") ? fedDays.every(day => within(day, {
      from: seen.on,
      to: until
    }) && stageOn(inStage, day) !== undefined) : (stryCov_9fa48("688"), fedDays.some(stryMutAct_9fa48("689") ? () => undefined : (stryCov_9fa48("689"), day => stryMutAct_9fa48("692") ? within(day, {
      from: seen.on,
      to: until
    }) || stageOn(inStage, day) !== undefined : stryMutAct_9fa48("691") ? false : stryMutAct_9fa48("690") ? true : (stryCov_9fa48("690", "691", "692"), within(day, stryMutAct_9fa48("693") ? {} : (stryCov_9fa48("693"), {
      from: seen.on,
      to: until
    })) && (stryMutAct_9fa48("695") ? stageOn(inStage, day) === undefined : stryMutAct_9fa48("694") ? true : (stryCov_9fa48("694", "695"), stageOn(inStage, day) !== undefined))))));
    if (stryMutAct_9fa48("698") ? first === undefined && !isFed : stryMutAct_9fa48("697") ? false : stryMutAct_9fa48("696") ? true : (stryCov_9fa48("696", "697", "698"), (stryMutAct_9fa48("700") ? first !== undefined : stryMutAct_9fa48("699") ? false : (stryCov_9fa48("699", "700"), first === undefined)) || (stryMutAct_9fa48("701") ? isFed : (stryCov_9fa48("701"), !isFed)))) return stryMutAct_9fa48("702") ? {} : (stryCov_9fa48("702"), {
      kind: stryMutAct_9fa48("703") ? "" : (stryCov_9fa48("703"), "no-feeding"),
      until
    });
    const {
      day: from,
      rule
    } = first;
    const before = stryMutAct_9fa48("704") ? sightings : (stryCov_9fa48("704"), sightings.filter(stryMutAct_9fa48("705") ? () => undefined : (stryCov_9fa48("705"), s => stryMutAct_9fa48("708") ? s.seen.on < seen.on || s.sign.key !== sign.key : stryMutAct_9fa48("707") ? false : stryMutAct_9fa48("706") ? true : (stryCov_9fa48("706", "707", "708"), (stryMutAct_9fa48("711") ? s.seen.on >= seen.on : stryMutAct_9fa48("710") ? s.seen.on <= seen.on : stryMutAct_9fa48("709") ? true : (stryCov_9fa48("709", "710", "711"), s.seen.on < seen.on)) && (stryMutAct_9fa48("713") ? s.sign.key === sign.key : stryMutAct_9fa48("712") ? true : (stryCov_9fa48("712", "713"), s.sign.key !== sign.key))))));
    const withIt = stryMutAct_9fa48("714") ? [] : (stryCov_9fa48("714"), [...before, ...(stryMutAct_9fa48("715") ? sightings : (stryCov_9fa48("715"), sightings.filter(stryMutAct_9fa48("716") ? () => undefined : (stryCov_9fa48("716"), s => stryMutAct_9fa48("719") ? s.seen !== seen : stryMutAct_9fa48("718") ? false : stryMutAct_9fa48("717") ? true : (stryCov_9fa48("717", "718", "719"), s.seen === seen)))))]);
    const rateOn = stryMutAct_9fa48("720") ? () => undefined : (stryCov_9fa48("720"), (() => {
      const rateOn = (holding: readonly Sighting[]): number => stryMutAct_9fa48("721") ? baseRate(planting, rule) / signLevel(holding, planting, spans, from, rule) : (stryCov_9fa48("721"), baseRate(planting, rule) * signLevel(holding, planting, spans, from, rule));
      return rateOn;
    })());
    const [fromMlPerL, toMlPerL] = stryMutAct_9fa48("722") ? [] : (stryCov_9fa48("722"), [rateOn(before), rateOn(withIt)]);
    if (stryMutAct_9fa48("726") ? Math.abs(toMlPerL - fromMlPerL) >= 1e-9 : stryMutAct_9fa48("725") ? Math.abs(toMlPerL - fromMlPerL) <= 1e-9 : stryMutAct_9fa48("724") ? false : stryMutAct_9fa48("723") ? true : (stryCov_9fa48("723", "724", "725", "726"), Math.abs(stryMutAct_9fa48("727") ? toMlPerL + fromMlPerL : (stryCov_9fa48("727"), toMlPerL - fromMlPerL)) < 1e-9)) return stryMutAct_9fa48("728") ? {} : (stryCov_9fa48("728"), {
      kind: stryMutAct_9fa48("729") ? "" : (stryCov_9fa48("729"), "at-highest"),
      rateMlPerL: fromMlPerL
    });
    const isHighest = stryMutAct_9fa48("732") ? toMlPerL >= rule.highestRateMlPerL - 1e-9 || stepOf(sign) > 1 : stryMutAct_9fa48("731") ? false : stryMutAct_9fa48("730") ? true : (stryCov_9fa48("730", "731", "732"), (stryMutAct_9fa48("735") ? toMlPerL < rule.highestRateMlPerL - 1e-9 : stryMutAct_9fa48("734") ? toMlPerL > rule.highestRateMlPerL - 1e-9 : stryMutAct_9fa48("733") ? true : (stryCov_9fa48("733", "734", "735"), toMlPerL >= (stryMutAct_9fa48("736") ? rule.highestRateMlPerL + 1e-9 : (stryCov_9fa48("736"), rule.highestRateMlPerL - 1e-9)))) && (stryMutAct_9fa48("739") ? stepOf(sign) <= 1 : stryMutAct_9fa48("738") ? stepOf(sign) >= 1 : stryMutAct_9fa48("737") ? true : (stryCov_9fa48("737", "738", "739"), stepOf(sign) > 1)));
    return stryMutAct_9fa48("740") ? {} : (stryCov_9fa48("740"), {
      kind: stryMutAct_9fa48("741") ? "" : (stryCov_9fa48("741"), "rate"),
      fromMlPerL,
      toMlPerL,
      isHighest,
      from,
      until
    });
  }
}

/**
 * The first day of the sign's time on which the planting is fed in a stage that the sign speaks of.
 *
 * @param spans those stages
 */
function firstChange(from: Day, to: Day, spans: readonly StageSpan[], fed: readonly FedSpan[]): {
  readonly day: Day;
  readonly rule: FeedRule;
} | undefined {
  if (stryMutAct_9fa48("742")) {
    {}
  } else {
    stryCov_9fa48("742");
    const found = stryMutAct_9fa48("744") ? spans.flatMap(span => fed.map(f => ({
      day: later(from, later(span.from, f.from)),
      to: earlier(to, earlier(span.to, f.to)),
      rule: f.rule
    }))).sort((a, b) => byText(a.day, b.day)) : stryMutAct_9fa48("743") ? spans.flatMap(span => fed.map(f => ({
      day: later(from, later(span.from, f.from)),
      to: earlier(to, earlier(span.to, f.to)),
      rule: f.rule
    }))).filter(f => f.day <= f.to) : (stryCov_9fa48("743", "744"), spans.flatMap(stryMutAct_9fa48("745") ? () => undefined : (stryCov_9fa48("745"), span => fed.map(stryMutAct_9fa48("746") ? () => undefined : (stryCov_9fa48("746"), f => stryMutAct_9fa48("747") ? {} : (stryCov_9fa48("747"), {
      day: later(from, later(span.from, f.from)),
      to: earlier(to, earlier(span.to, f.to)),
      rule: f.rule
    }))))).filter(stryMutAct_9fa48("748") ? () => undefined : (stryCov_9fa48("748"), f => stryMutAct_9fa48("752") ? f.day > f.to : stryMutAct_9fa48("751") ? f.day < f.to : stryMutAct_9fa48("750") ? false : stryMutAct_9fa48("749") ? true : (stryCov_9fa48("749", "750", "751", "752"), f.day <= f.to))).sort(stryMutAct_9fa48("753") ? () => undefined : (stryCov_9fa48("753"), (a, b) => byText(a.day, b.day))));
    return found[0];
  }
}