/** Which rule feeds a planting in which of its stages. */
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
import type { Crop } from "../crops/index.js";
import { addDays, type Day, daysBetween, type DaySpan, earlier, later } from "../dates.js";
import { type Amounts, type Planting, type Route, routes, shortDate, vesselOf } from "../garden/index.js";
import type { LastDay, StageSpan } from "../stages/index.js";
import type { FeedRule } from "./rule.js";

/** One route of feeding over time: spans in order, each under one rule; a hole begins a new course. */
export interface FedSpan extends DaySpan {
  readonly route: Route;
  readonly rule: FeedRule;
}
export interface RuleMatch {
  readonly spans: readonly FedSpan[];
  /** Why it is fed, or why not, in words for the grower. */
  readonly reason: string;
}
export interface LifeToFeed {
  readonly spans: readonly StageSpan[];
  readonly harvestFrom: Day;
  /** Its last day in the bed; the end of its spans where absent. */
  readonly last?: LastDay;
}

/** The most specific rule wins, the grower's own before a built-in one, then the order of the table. */
export function matchRules(planting: Planting, crop: Crop, life: LifeToFeed, rules: readonly FeedRule[], amounts: Amounts = stryMutAct_9fa48("64") ? "" : (stryCov_9fa48("64"), "metric")): RuleMatch {
  if (stryMutAct_9fa48("65")) {
    {}
  } else {
    stryCov_9fa48("65");
    const habit = stryMutAct_9fa48("66") ? planting.habit && crop.usualHabit : (stryCov_9fa48("66"), planting.habit ?? crop.usualHabit);
    const candidates = stryMutAct_9fa48("67") ? rules : (stryCov_9fa48("67"), rules.filter(stryMutAct_9fa48("68") ? () => undefined : (stryCov_9fa48("68"), rule => stryMutAct_9fa48("71") ? specificity(rule, crop) > 0 || rule.habit === undefined || rule.habit === habit : stryMutAct_9fa48("70") ? false : stryMutAct_9fa48("69") ? true : (stryCov_9fa48("69", "70", "71"), (stryMutAct_9fa48("74") ? specificity(rule, crop) <= 0 : stryMutAct_9fa48("73") ? specificity(rule, crop) >= 0 : stryMutAct_9fa48("72") ? true : (stryCov_9fa48("72", "73", "74"), specificity(rule, crop) > 0)) && (stryMutAct_9fa48("76") ? rule.habit === undefined && rule.habit === habit : stryMutAct_9fa48("75") ? true : (stryCov_9fa48("75", "76"), (stryMutAct_9fa48("78") ? rule.habit !== undefined : stryMutAct_9fa48("77") ? false : (stryCov_9fa48("77", "78"), rule.habit === undefined)) || (stryMutAct_9fa48("80") ? rule.habit !== habit : stryMutAct_9fa48("79") ? false : (stryCov_9fa48("79", "80"), rule.habit === habit))))))));
    if (stryMutAct_9fa48("83") ? planting.feed !== "no" : stryMutAct_9fa48("82") ? false : stryMutAct_9fa48("81") ? true : (stryCov_9fa48("81", "82", "83"), planting.feed === (stryMutAct_9fa48("84") ? "" : (stryCov_9fa48("84"), "no")))) return stryMutAct_9fa48("85") ? {} : (stryCov_9fa48("85"), {
      spans: stryMutAct_9fa48("86") ? ["Stryker was here"] : (stryCov_9fa48("86"), []),
      reason: stryMutAct_9fa48("87") ? "" : (stryCov_9fa48("87"), "not fed, as the garden file says (`feed: false`)")
    });
    if (stryMutAct_9fa48("90") ? candidates.length !== 0 : stryMutAct_9fa48("89") ? false : stryMutAct_9fa48("88") ? true : (stryCov_9fa48("88", "89", "90"), candidates.length === 0)) {
      if (stryMutAct_9fa48("91")) {
        {}
      } else {
        stryCov_9fa48("91");
        const asked = (stryMutAct_9fa48("94") ? planting.feed !== "by-rule" : stryMutAct_9fa48("93") ? false : stryMutAct_9fa48("92") ? true : (stryCov_9fa48("92", "93", "94"), planting.feed === (stryMutAct_9fa48("95") ? "" : (stryCov_9fa48("95"), "by-rule")))) ? stryMutAct_9fa48("96") ? "Stryker was here!" : (stryCov_9fa48("96"), "") : stryMutAct_9fa48("97") ? `` : (stryCov_9fa48("97"), `\`feed:\` asks for it, but no rule feeds ${crop.name}: write one of your own (\`rules:\`). `);
        return stryMutAct_9fa48("98") ? {} : (stryCov_9fa48("98"), {
          spans: stryMutAct_9fa48("99") ? ["Stryker was here"] : (stryCov_9fa48("99"), []),
          reason: stryMutAct_9fa48("100") ? `` : (stryCov_9fa48("100"), `${asked}${crop.reason}`)
        });
      }
    }
    const best = candidates.reduce(stryMutAct_9fa48("101") ? () => undefined : (stryCov_9fa48("101"), (a, b) => (stryMutAct_9fa48("105") ? rank(b) >= rank(a) : stryMutAct_9fa48("104") ? rank(b) <= rank(a) : stryMutAct_9fa48("103") ? false : stryMutAct_9fa48("102") ? true : (stryCov_9fa48("102", "103", "104", "105"), rank(b) < rank(a))) ? b : a));
    const active = stryMutAct_9fa48("106") ? candidates : (stryCov_9fa48("106"), candidates.filter(stryMutAct_9fa48("107") ? () => undefined : (stryCov_9fa48("107"), rule => isAsked(rule, planting, best))));
    const asked = routes.find(stryMutAct_9fa48("108") ? () => undefined : (stryCov_9fa48("108"), route => stryMutAct_9fa48("111") ? route !== planting.feed : stryMutAct_9fa48("110") ? false : stryMutAct_9fa48("109") ? true : (stryCov_9fa48("109", "110", "111"), route === planting.feed)));
    if (stryMutAct_9fa48("114") ? active.length === 0 || asked !== undefined : stryMutAct_9fa48("113") ? false : stryMutAct_9fa48("112") ? true : (stryCov_9fa48("112", "113", "114"), (stryMutAct_9fa48("116") ? active.length !== 0 : stryMutAct_9fa48("115") ? true : (stryCov_9fa48("115", "116"), active.length === 0)) && (stryMutAct_9fa48("118") ? asked === undefined : stryMutAct_9fa48("117") ? true : (stryCov_9fa48("117", "118"), asked !== undefined)))) return stryMutAct_9fa48("119") ? {} : (stryCov_9fa48("119"), {
      spans: stryMutAct_9fa48("120") ? ["Stryker was here"] : (stryCov_9fa48("120"), []),
      reason: stryMutAct_9fa48("121") ? `` : (stryCov_9fa48("121"), `not fed: no rule gives ${crop.name} a ${asked} feed, only a ${best.route} one`)
    });
    if (stryMutAct_9fa48("124") ? active.length !== 0 : stryMutAct_9fa48("123") ? false : stryMutAct_9fa48("122") ? true : (stryCov_9fa48("122", "123", "124"), active.length === 0)) return stryMutAct_9fa48("125") ? {} : (stryCov_9fa48("125"), {
      spans: stryMutAct_9fa48("126") ? ["Stryker was here"] : (stryCov_9fa48("126"), []),
      reason: stryMutAct_9fa48("127") ? `` : (stryCov_9fa48("127"), `not fed unless asked for (\`feed: true\`), as ${evidenceWords[best.evidence]}: ${best.reason}`)
    });
    const spans = routes.flatMap(stryMutAct_9fa48("128") ? () => undefined : (stryCov_9fa48("128"), route => fedSpans(planting, crop, life, active, route)));
    const fedBy = stryMutAct_9fa48("129") ? [] : (stryCov_9fa48("129"), [...new Set(spans.map(stryMutAct_9fa48("130") ? () => undefined : (stryCov_9fa48("130"), span => span.rule)))]);
    if (stryMutAct_9fa48("133") ? fedBy.length !== 0 : stryMutAct_9fa48("132") ? false : stryMutAct_9fa48("131") ? true : (stryCov_9fa48("131", "132", "133"), fedBy.length === 0)) return stryMutAct_9fa48("134") ? {} : (stryCov_9fa48("134"), {
      spans,
      reason: whyNever(planting, life, best, amounts)
    });
    return stryMutAct_9fa48("135") ? {} : (stryCov_9fa48("135"), {
      spans: joined(spans),
      reason: fedBy.map(stryMutAct_9fa48("136") ? () => undefined : (stryCov_9fa48("136"), rule => stryMutAct_9fa48("137") ? `` : (stryCov_9fa48("137"), `against ${rule.disorder}: ${rule.reason}`))).join(stryMutAct_9fa48("138") ? "" : (stryCov_9fa48("138"), " "))
    });
  }
}
function whyNever({
  transplanted
}: Planting, life: LifeToFeed, rule: FeedRule, amounts: Amounts): string {
  if (stryMutAct_9fa48("139")) {
    {}
  } else {
    stryCov_9fa48("139");
    const inStage = stryMutAct_9fa48("140") ? life.spans.every(({
      stage,
      to
    }) => rule.stages.includes(stage) && (transplanted ?? to) <= to) : (stryCov_9fa48("140"), life.spans.some(stryMutAct_9fa48("141") ? () => undefined : (stryCov_9fa48("141"), ({
      stage,
      to
    }) => stryMutAct_9fa48("144") ? rule.stages.includes(stage) || (transplanted ?? to) <= to : stryMutAct_9fa48("143") ? false : stryMutAct_9fa48("142") ? true : (stryCov_9fa48("142", "143", "144"), rule.stages.includes(stage) && (stryMutAct_9fa48("147") ? (transplanted ?? to) > to : stryMutAct_9fa48("146") ? (transplanted ?? to) < to : stryMutAct_9fa48("145") ? true : (stryCov_9fa48("145", "146", "147"), (stryMutAct_9fa48("148") ? transplanted && to : (stryCov_9fa48("148"), transplanted ?? to)) <= to))))));
    if (stryMutAct_9fa48("151") ? false : stryMutAct_9fa48("150") ? true : stryMutAct_9fa48("149") ? inStage : (stryCov_9fa48("149", "150", "151"), !inStage)) return stryMutAct_9fa48("152") ? `` : (stryCov_9fa48("152"), `not fed: it is not in a stage that is fed (${rule.stages.join(stryMutAct_9fa48("153") ? "" : (stryCov_9fa48("153"), ", "))})`);
    const {
      stopBeforeHarvestDays: harvestDays
    } = rule;
    const pickDays = stopBeforePickDays(rule, life);
    return (stryMutAct_9fa48("157") ? pickDays <= harvestDays : stryMutAct_9fa48("156") ? pickDays >= harvestDays : stryMutAct_9fa48("155") ? false : stryMutAct_9fa48("154") ? true : (stryCov_9fa48("154", "155", "156", "157"), pickDays > harvestDays)) ? stryMutAct_9fa48("158") ? `` : (stryCov_9fa48("158"), `not fed: its last day is ${shortDate(lastPick(life), amounts)}, and a feeding in the ${pickDays} days before it helps no fruit that is still picked`) : stryMutAct_9fa48("159") ? `` : (stryCov_9fa48("159"), `not fed: harvest begins on ${shortDate(life.harvestFrom, amounts)}, and nothing is given in the ${harvestDays} days before it`);
  }
}

/** Of one route, each stage by itself. */
function fedSpans(planting: Planting, crop: Crop, life: LifeToFeed, active: readonly FeedRule[], route: Route): FedSpan[] {
  if (stryMutAct_9fa48("160")) {
    {}
  } else {
    stryCov_9fa48("160");
    let before: FeedRule | undefined;
    return life.spans.flatMap((span): FedSpan[] => {
      if (stryMutAct_9fa48("161")) {
        {}
      } else {
        stryCov_9fa48("161");
        const own = winner(active, route, span, crop);
        // Through the harvest, the rule that has begun goes on where none is for the stage.
        const isHeldThrough = stryMutAct_9fa48("164") ? span.stage !== "after-harvest" || !wetsFlowers(route, span) : stryMutAct_9fa48("163") ? false : stryMutAct_9fa48("162") ? true : (stryCov_9fa48("162", "163", "164"), (stryMutAct_9fa48("166") ? span.stage === "after-harvest" : stryMutAct_9fa48("165") ? true : (stryCov_9fa48("165", "166"), span.stage !== (stryMutAct_9fa48("167") ? "" : (stryCov_9fa48("167"), "after-harvest")))) && (stryMutAct_9fa48("168") ? wetsFlowers(route, span) : (stryCov_9fa48("168"), !wetsFlowers(route, span))));
        const rule = stryMutAct_9fa48("169") ? own && (planting.through && isHeldThrough ? before : undefined) : (stryCov_9fa48("169"), own ?? ((stryMutAct_9fa48("172") ? planting.through || isHeldThrough : stryMutAct_9fa48("171") ? false : stryMutAct_9fa48("170") ? true : (stryCov_9fa48("170", "171", "172"), planting.through && isHeldThrough)) ? before : undefined));
        before = stryMutAct_9fa48("173") ? rule && before : (stryCov_9fa48("173"), rule ?? before);
        if (stryMutAct_9fa48("176") ? rule !== undefined : stryMutAct_9fa48("175") ? false : stryMutAct_9fa48("174") ? true : (stryCov_9fa48("174", "175", "176"), rule === undefined)) return stryMutAct_9fa48("177") ? ["Stryker was here"] : (stryCov_9fa48("177"), []);
        if (stryMutAct_9fa48("180") ? own === undefined && rule.stopBeforeHarvestDays > 0 || span.from >= life.harvestFrom : stryMutAct_9fa48("179") ? false : stryMutAct_9fa48("178") ? true : (stryCov_9fa48("178", "179", "180"), (stryMutAct_9fa48("182") ? own === undefined || rule.stopBeforeHarvestDays > 0 : stryMutAct_9fa48("181") ? true : (stryCov_9fa48("181", "182"), (stryMutAct_9fa48("184") ? own !== undefined : stryMutAct_9fa48("183") ? true : (stryCov_9fa48("183", "184"), own === undefined)) && (stryMutAct_9fa48("187") ? rule.stopBeforeHarvestDays <= 0 : stryMutAct_9fa48("186") ? rule.stopBeforeHarvestDays >= 0 : stryMutAct_9fa48("185") ? true : (stryCov_9fa48("185", "186", "187"), rule.stopBeforeHarvestDays > 0)))) && (stryMutAct_9fa48("190") ? span.from < life.harvestFrom : stryMutAct_9fa48("189") ? span.from > life.harvestFrom : stryMutAct_9fa48("188") ? true : (stryCov_9fa48("188", "189", "190"), span.from >= life.harvestFrom)))) return stryMutAct_9fa48("191") ? ["Stryker was here"] : (stryCov_9fa48("191"), []);
        // Young plants in their trays are not in the bed yet.
        const from = later(span.from, stryMutAct_9fa48("192") ? planting.transplanted && span.from : (stryCov_9fa48("192"), planting.transplanted ?? span.from));
        const to = stopDay(span, rule, life, stryMutAct_9fa48("195") ? planting.through === undefined : stryMutAct_9fa48("194") ? false : stryMutAct_9fa48("193") ? true : (stryCov_9fa48("193", "194", "195"), planting.through !== undefined));
        return (stryMutAct_9fa48("199") ? to >= from : stryMutAct_9fa48("198") ? to <= from : stryMutAct_9fa48("197") ? false : stryMutAct_9fa48("196") ? true : (stryCov_9fa48("196", "197", "198", "199"), to < from)) ? stryMutAct_9fa48("200") ? ["Stryker was here"] : (stryCov_9fa48("200"), []) : stryMutAct_9fa48("201") ? [] : (stryCov_9fa48("201"), [stryMutAct_9fa48("202") ? {} : (stryCov_9fa48("202"), {
          route,
          rule,
          from,
          to
        })]);
      }
    });
  }
}

/** Where no rule says so itself, open flowers are never sprayed: common practice, no source. */
function wetsFlowers(route: Route, {
  stage
}: StageSpan): boolean {
  if (stryMutAct_9fa48("203")) {
    {}
  } else {
    stryCov_9fa48("203");
    return stryMutAct_9fa48("206") ? vesselOf(route) === "sprayer" || stage === "flowering" : stryMutAct_9fa48("205") ? false : stryMutAct_9fa48("204") ? true : (stryCov_9fa48("204", "205", "206"), (stryMutAct_9fa48("208") ? vesselOf(route) !== "sprayer" : stryMutAct_9fa48("207") ? true : (stryCov_9fa48("207", "208"), vesselOf(route) === (stryMutAct_9fa48("209") ? "" : (stryCov_9fa48("209"), "sprayer")))) && (stryMutAct_9fa48("211") ? stage !== "flowering" : stryMutAct_9fa48("210") ? true : (stryCov_9fa48("210", "211"), stage === (stryMutAct_9fa48("212") ? "" : (stryCov_9fa48("212"), "flowering")))));
  }
}

/** The best evidence first. */
const evidenceWords: Record<FeedRule["evidence"], string> = stryMutAct_9fa48("213") ? {} : (stryCov_9fa48("213"), {
  published: stryMutAct_9fa48("214") ? "" : (stryCov_9fa48("214"), "published work supports it only in some cases"),
  "common-practice": stryMutAct_9fa48("215") ? "" : (stryCov_9fa48("215"), "it is a practice without trials"),
  "cause-unclear": stryMutAct_9fa48("216") ? "" : (stryCov_9fa48("216"), "what looks like the disorder may be another"),
  disputed: stryMutAct_9fa48("217") ? "" : (stryCov_9fa48("217"), "published work disagrees on whether it helps"),
  "advised-against": stryMutAct_9fa48("218") ? "" : (stryCov_9fa48("218"), "published work found no effect or advises against it")
});

/** 2 for the crop by name, 1 for its group, 0 for none. */
function specificity(rule: FeedRule, crop: Crop): number {
  if (stryMutAct_9fa48("219")) {
    {}
  } else {
    stryCov_9fa48("219");
    return rule.crops.includes(crop.key) ? 2 : rule.groups.includes(crop.group) ? 1 : 0;
  }
}

/** Rules apply by default, or because the grower asks for their route, or for any feed at all. */
function isAsked(rule: FeedRule, planting: Planting, best: FeedRule): boolean {
  if (stryMutAct_9fa48("220")) {
    {}
  } else {
    stryCov_9fa48("220");
    switch (planting.feed) {
      case stryMutAct_9fa48("222") ? "" : (stryCov_9fa48("222"), "no"):
        if (stryMutAct_9fa48("221")) {} else {
          stryCov_9fa48("221");
          return stryMutAct_9fa48("223") ? true : (stryCov_9fa48("223"), false);
        }
      case stryMutAct_9fa48("225") ? "" : (stryCov_9fa48("225"), "by-rule"):
        if (stryMutAct_9fa48("224")) {} else {
          stryCov_9fa48("224");
          return rule.byDefault;
        }
      case stryMutAct_9fa48("226") ? "" : (stryCov_9fa48("226"), "drench"):
      case stryMutAct_9fa48("228") ? "" : (stryCov_9fa48("228"), "foliar"):
        if (stryMutAct_9fa48("227")) {} else {
          stryCov_9fa48("227");
          return stryMutAct_9fa48("231") ? rule.route !== planting.feed : stryMutAct_9fa48("230") ? false : stryMutAct_9fa48("229") ? true : (stryCov_9fa48("229", "230", "231"), rule.route === planting.feed);
        }
      case stryMutAct_9fa48("233") ? "" : (stryCov_9fa48("233"), "both"):
        if (stryMutAct_9fa48("232")) {} else {
          stryCov_9fa48("232");
          return stryMutAct_9fa48("234") ? false : (stryCov_9fa48("234"), true);
        }
      case stryMutAct_9fa48("236") ? "" : (stryCov_9fa48("236"), "yes"):
        if (stryMutAct_9fa48("235")) {} else {
          stryCov_9fa48("235");
          return best.byDefault ? rule.byDefault : stryMutAct_9fa48("239") ? rule.route !== best.route : stryMutAct_9fa48("238") ? false : stryMutAct_9fa48("237") ? true : (stryCov_9fa48("237", "238", "239"), rule.route === best.route);
        }
    }
  }
}
function rank(rule: FeedRule): number {
  if (stryMutAct_9fa48("240")) {
    {}
  } else {
    stryCov_9fa48("240");
    return stryMutAct_9fa48("241") ? Object.keys(evidenceWords).indexOf(rule.evidence) - (rule.byDefault ? 0 : 10) : (stryCov_9fa48("241"), Object.keys(evidenceWords).indexOf(rule.evidence) + (rule.byDefault ? 0 : 10));
  }
}
function winner(rules: readonly FeedRule[], route: Route, span: StageSpan, crop: Crop): FeedRule | undefined {
  if (stryMutAct_9fa48("242")) {
    {}
  } else {
    stryCov_9fa48("242");
    const fitting = stryMutAct_9fa48("243") ? rules : (stryCov_9fa48("243"), rules.filter(stryMutAct_9fa48("244") ? () => undefined : (stryCov_9fa48("244"), rule => stryMutAct_9fa48("247") ? rule.route === route || rule.stages.includes(span.stage) : stryMutAct_9fa48("246") ? false : stryMutAct_9fa48("245") ? true : (stryCov_9fa48("245", "246", "247"), (stryMutAct_9fa48("249") ? rule.route !== route : stryMutAct_9fa48("248") ? true : (stryCov_9fa48("248", "249"), rule.route === route)) && rule.stages.includes(span.stage)))));
    const weight = stryMutAct_9fa48("250") ? () => undefined : (stryCov_9fa48("250"), (() => {
      const weight = (rule: FeedRule): number => stryMutAct_9fa48("251") ? specificity(rule, crop) + (rule.habit === undefined ? 0 : 0.5) - (rule.own ? 10 : 0) : (stryCov_9fa48("251"), (stryMutAct_9fa48("252") ? specificity(rule, crop) - (rule.habit === undefined ? 0 : 0.5) : (stryCov_9fa48("252"), specificity(rule, crop) + ((stryMutAct_9fa48("255") ? rule.habit !== undefined : stryMutAct_9fa48("254") ? false : stryMutAct_9fa48("253") ? true : (stryCov_9fa48("253", "254", "255"), rule.habit === undefined)) ? 0 : 0.5))) + (rule.own ? 10 : 0));
      return weight;
    })());
    return fitting.reduce<FeedRule | undefined>(stryMutAct_9fa48("256") ? () => undefined : (stryCov_9fa48("256"), (best, rule) => (stryMutAct_9fa48("259") ? best === undefined && weight(rule) > weight(best) : stryMutAct_9fa48("258") ? false : stryMutAct_9fa48("257") ? true : (stryCov_9fa48("257", "258", "259"), (stryMutAct_9fa48("261") ? best !== undefined : stryMutAct_9fa48("260") ? false : (stryCov_9fa48("260", "261"), best === undefined)) || (stryMutAct_9fa48("264") ? weight(rule) <= weight(best) : stryMutAct_9fa48("263") ? weight(rule) >= weight(best) : stryMutAct_9fa48("262") ? false : (stryCov_9fa48("262", "263", "264"), weight(rule) > weight(best))))) ? rule : best), undefined);
  }
}

/** The last day of a span that the rule's stops leave: before harvest always, before the last pick as a rule. */
function stopDay(span: StageSpan, rule: FeedRule, life: LifeToFeed, isThrough: boolean): Day {
  if (stryMutAct_9fa48("265")) {
    {}
  } else {
    stryCov_9fa48("265");
    const {
      stopBeforeHarvestDays
    } = rule;
    const pickDays = stopBeforePickDays(rule, life);
    const stops = stryMutAct_9fa48("266") ? [] : (stryCov_9fa48("266"), [...((stryMutAct_9fa48("269") ? stopBeforeHarvestDays === 0 && span.from >= life.harvestFrom : stryMutAct_9fa48("268") ? false : stryMutAct_9fa48("267") ? true : (stryCov_9fa48("267", "268", "269"), (stryMutAct_9fa48("271") ? stopBeforeHarvestDays !== 0 : stryMutAct_9fa48("270") ? false : (stryCov_9fa48("270", "271"), stopBeforeHarvestDays === 0)) || (stryMutAct_9fa48("274") ? span.from < life.harvestFrom : stryMutAct_9fa48("273") ? span.from > life.harvestFrom : stryMutAct_9fa48("272") ? false : (stryCov_9fa48("272", "273", "274"), span.from >= life.harvestFrom)))) ? stryMutAct_9fa48("275") ? ["Stryker was here"] : (stryCov_9fa48("275"), []) : stryMutAct_9fa48("276") ? [] : (stryCov_9fa48("276"), [addDays(life.harvestFrom, stryMutAct_9fa48("277") ? -stopBeforeHarvestDays + 1 : (stryCov_9fa48("277"), (stryMutAct_9fa48("278") ? +stopBeforeHarvestDays : (stryCov_9fa48("278"), -stopBeforeHarvestDays)) - 1))])), ...((stryMutAct_9fa48("281") ? pickDays === 0 && isThrough : stryMutAct_9fa48("280") ? false : stryMutAct_9fa48("279") ? true : (stryCov_9fa48("279", "280", "281"), (stryMutAct_9fa48("283") ? pickDays !== 0 : stryMutAct_9fa48("282") ? false : (stryCov_9fa48("282", "283"), pickDays === 0)) || isThrough)) ? stryMutAct_9fa48("284") ? ["Stryker was here"] : (stryCov_9fa48("284"), []) : stryMutAct_9fa48("285") ? [] : (stryCov_9fa48("285"), [addDays(lastPick(life), stryMutAct_9fa48("286") ? -pickDays + 1 : (stryCov_9fa48("286"), (stryMutAct_9fa48("287") ? +pickDays : (stryCov_9fa48("287"), -pickDays)) - 1))]))]);
    return stops.reduce(earlier, span.to);
  }
}

/** The last day on which the rule may feed at all, in whatever stage. */
export function feedableTo(rule: FeedRule, life: LifeToFeed): Day {
  if (stryMutAct_9fa48("288")) {
    {}
  } else {
    stryCov_9fa48("288");
    const {
      stages,
      stopBeforeHarvestDays
    } = rule;
    const pickDays = stopBeforePickDays(rule, life);
    const stopsForPick = (stryMutAct_9fa48("291") ? pickDays !== 0 : stryMutAct_9fa48("290") ? false : stryMutAct_9fa48("289") ? true : (stryCov_9fa48("289", "290", "291"), pickDays === 0)) ? 0 : stryMutAct_9fa48("292") ? pickDays - 1 : (stryCov_9fa48("292"), pickDays + 1);
    const last = addDays(lastPick(life), stryMutAct_9fa48("293") ? +stopsForPick : (stryCov_9fa48("293"), -stopsForPick));
    return (stryMutAct_9fa48("296") ? stopBeforeHarvestDays === 0 && stages.includes("harvest") : stryMutAct_9fa48("295") ? false : stryMutAct_9fa48("294") ? true : (stryCov_9fa48("294", "295", "296"), (stryMutAct_9fa48("298") ? stopBeforeHarvestDays !== 0 : stryMutAct_9fa48("297") ? false : (stryCov_9fa48("297", "298"), stopBeforeHarvestDays === 0)) || stages.includes(stryMutAct_9fa48("299") ? "" : (stryCov_9fa48("299"), "harvest")))) ? last : earlier(last, addDays(life.harvestFrom, stryMutAct_9fa48("300") ? -stopBeforeHarvestDays + 1 : (stryCov_9fa48("300"), (stryMutAct_9fa48("301") ? +stopBeforeHarvestDays : (stryCov_9fa48("301"), -stopBeforeHarvestDays)) - 1)));
  }
}

/** What is taken out was to be picked for longer: nobody stopped feeding it for that. */
function stopBeforePickDays({
  stopBeforeLastPickDays
}: FeedRule, {
  last
}: LifeToFeed): number {
  if (stryMutAct_9fa48("302")) {
    {}
  } else {
    stryCov_9fa48("302");
    return (stryMutAct_9fa48("305") ? last?.by !== "removed" : stryMutAct_9fa48("304") ? false : stryMutAct_9fa48("303") ? true : (stryCov_9fa48("303", "304", "305"), (stryMutAct_9fa48("306") ? last.by : (stryCov_9fa48("306"), last?.by)) === (stryMutAct_9fa48("307") ? "" : (stryCov_9fa48("307"), "removed")))) ? 0 : stopBeforeLastPickDays;
  }
}
function lastPick({
  spans,
  harvestFrom,
  last
}: LifeToFeed): Day {
  if (stryMutAct_9fa48("308")) {
    {}
  } else {
    stryCov_9fa48("308");
    return stryMutAct_9fa48("309") ? (last?.day ?? spans.findLast(({
      stage
    }) => stage === "harvest")?.to) && harvestFrom : (stryCov_9fa48("309"), (stryMutAct_9fa48("310") ? last?.day && spans.findLast(({
      stage
    }) => stage === "harvest")?.to : (stryCov_9fa48("310"), (stryMutAct_9fa48("311") ? last.day : (stryCov_9fa48("311"), last?.day)) ?? (stryMutAct_9fa48("312") ? spans.findLast(({
      stage
    }) => stage === "harvest").to : (stryCov_9fa48("312"), spans.findLast(stryMutAct_9fa48("313") ? () => undefined : (stryCov_9fa48("313"), ({
      stage
    }) => stryMutAct_9fa48("316") ? stage !== "harvest" : stryMutAct_9fa48("315") ? false : stryMutAct_9fa48("314") ? true : (stryCov_9fa48("314", "315", "316"), stage === (stryMutAct_9fa48("317") ? "" : (stryCov_9fa48("317"), "harvest")))))?.to)))) ?? harvestFrom);
  }
}

/** Neighbouring spans under one rule are one span. */
function joined(spans: readonly FedSpan[]): FedSpan[] {
  if (stryMutAct_9fa48("318")) {
    {}
  } else {
    stryCov_9fa48("318");
    const result: FedSpan[] = stryMutAct_9fa48("319") ? ["Stryker was here"] : (stryCov_9fa48("319"), []);
    for (const span of spans) {
      if (stryMutAct_9fa48("320")) {
        {}
      } else {
        stryCov_9fa48("320");
        const last = result.at(stryMutAct_9fa48("321") ? +1 : (stryCov_9fa48("321"), -1));
        if (stryMutAct_9fa48("324") ? last?.rule === span.rule && last.route === span.route || daysBetween(last.to, span.from) === 1 : stryMutAct_9fa48("323") ? false : stryMutAct_9fa48("322") ? true : (stryCov_9fa48("322", "323", "324"), (stryMutAct_9fa48("326") ? last?.rule === span.rule || last.route === span.route : stryMutAct_9fa48("325") ? true : (stryCov_9fa48("325", "326"), (stryMutAct_9fa48("328") ? last?.rule !== span.rule : stryMutAct_9fa48("327") ? true : (stryCov_9fa48("327", "328"), (stryMutAct_9fa48("329") ? last.rule : (stryCov_9fa48("329"), last?.rule)) === span.rule)) && (stryMutAct_9fa48("331") ? last.route !== span.route : stryMutAct_9fa48("330") ? true : (stryCov_9fa48("330", "331"), last.route === span.route)))) && (stryMutAct_9fa48("333") ? daysBetween(last.to, span.from) !== 1 : stryMutAct_9fa48("332") ? true : (stryCov_9fa48("332", "333"), daysBetween(last.to, span.from) === 1)))) result[stryMutAct_9fa48("334") ? result.length + 1 : (stryCov_9fa48("334"), result.length - 1)] = stryMutAct_9fa48("335") ? {} : (stryCov_9fa48("335"), {
          ...last,
          to: span.to
        });else result.push(span);
      }
    }
    return result;
  }
}