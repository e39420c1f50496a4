/** A planting's own rate, level and interval against the limits of the rules that feed it. */
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
import { type Amounts, decimal, type Planting, rateText } from "../garden/index.js";
import type { Finding } from "../problem.js";
import type { FeedRule } from "./rule.js";

/** What goes beyond a limit is refused with the rule's reason. */
export function wishesBeyondLimits(planting: Planting, rules: readonly FeedRule[], amounts: Amounts): Finding[] {
  if (stryMutAct_9fa48("0")) {
    {}
  } else {
    stryCov_9fa48("0");
    const findings = rules.flatMap(stryMutAct_9fa48("1") ? () => undefined : (stryCov_9fa48("1"), rule => stryMutAct_9fa48("2") ? [] : (stryCov_9fa48("2"), [...rateBeyond(planting, rule, amounts), ...intervalBeyond(planting, rule)])));
    const seen = new Set<string>();
    return stryMutAct_9fa48("3") ? findings : (stryCov_9fa48("3"), findings.filter(stryMutAct_9fa48("4") ? () => undefined : (stryCov_9fa48("4"), f => stryMutAct_9fa48("7") ? !seen.has(f.message) || seen.add(f.message) : stryMutAct_9fa48("6") ? false : stryMutAct_9fa48("5") ? true : (stryCov_9fa48("5", "6", "7"), (stryMutAct_9fa48("8") ? seen.has(f.message) : (stryCov_9fa48("8"), !seen.has(f.message))) && seen.add(f.message)))));
  }
}
function rateBeyond(planting: Planting, rule: FeedRule, amounts: Amounts): Finding[] {
  if (stryMutAct_9fa48("9")) {
    {}
  } else {
    stryCov_9fa48("9");
    const base = stryMutAct_9fa48("10") ? planting.rateMlPerL && rule.rateMlPerL : (stryCov_9fa48("10"), planting.rateMlPerL ?? rule.rateMlPerL);
    const rateMlPerL = stryMutAct_9fa48("11") ? base / planting.level : (stryCov_9fa48("11"), base * planting.level);
    if (stryMutAct_9fa48("15") ? rateMlPerL > rule.highestRateMlPerL * (1 + 1e-9) : stryMutAct_9fa48("14") ? rateMlPerL < rule.highestRateMlPerL * (1 + 1e-9) : stryMutAct_9fa48("13") ? false : stryMutAct_9fa48("12") ? true : (stryCov_9fa48("12", "13", "14", "15"), rateMlPerL <= (stryMutAct_9fa48("16") ? rule.highestRateMlPerL / (1 + 1e-9) : (stryCov_9fa48("16"), rule.highestRateMlPerL * (stryMutAct_9fa48("17") ? 1 - 1e-9 : (stryCov_9fa48("17"), 1 + 1e-9)))))) return stryMutAct_9fa48("18") ? ["Stryker was here"] : (stryCov_9fa48("18"), []);
    const key = (stryMutAct_9fa48("21") ? planting.rateMlPerL !== undefined : stryMutAct_9fa48("20") ? false : stryMutAct_9fa48("19") ? true : (stryCov_9fa48("19", "20", "21"), planting.rateMlPerL === undefined)) ? stryMutAct_9fa48("22") ? "" : (stryCov_9fa48("22"), "level") : stryMutAct_9fa48("23") ? "" : (stryCov_9fa48("23"), "rate");
    const highest = rateText(rule.highestRateMlPerL, amounts);
    return stryMutAct_9fa48("24") ? [] : (stryCov_9fa48("24"), [stryMutAct_9fa48("25") ? {} : (stryCov_9fa48("25"), {
      code: stryMutAct_9fa48("26") ? "" : (stryCov_9fa48("26"), "beyond-limit"),
      path: stryMutAct_9fa48("27") ? [] : (stryCov_9fa48("27"), [...planting.path, key]),
      message: stryMutAct_9fa48("28") ? `` : (stryCov_9fa48("28"), `${rateText(rateMlPerL, amounts)} is above the limit of the rule ${rule.id}, ${highest} (${plainEnd(rule.limitsReason)})`),
      mend: (stryMutAct_9fa48("31") ? key !== "rate" : stryMutAct_9fa48("30") ? false : stryMutAct_9fa48("29") ? true : (stryCov_9fa48("29", "30", "31"), key === (stryMutAct_9fa48("32") ? "" : (stryCov_9fa48("32"), "rate")))) ? stryMutAct_9fa48("33") ? `` : (stryCov_9fa48("33"), `write ${highest} or less`) : stryMutAct_9fa48("34") ? `` : (stryCov_9fa48("34"), `write a level of ${decimal(stryMutAct_9fa48("35") ? Math.floor(rule.highestRateMlPerL / base * 100) * 100 : (stryCov_9fa48("35"), Math.floor(stryMutAct_9fa48("36") ? rule.highestRateMlPerL / base / 100 : (stryCov_9fa48("36"), (stryMutAct_9fa48("37") ? rule.highestRateMlPerL * base : (stryCov_9fa48("37"), rule.highestRateMlPerL / base)) * 100)) / 100), 2)} or less`)
    })]);
  }
}
function intervalBeyond(planting: Planting, rule: FeedRule): Finding[] {
  if (stryMutAct_9fa48("38")) {
    {}
  } else {
    stryCov_9fa48("38");
    const wish = planting.intervalDays;
    const {
      shortestDays,
      longestDays
    } = rule.interval;
    if (stryMutAct_9fa48("41") ? wish === undefined && shortestDays <= wish && wish <= longestDays : stryMutAct_9fa48("40") ? false : stryMutAct_9fa48("39") ? true : (stryCov_9fa48("39", "40", "41"), (stryMutAct_9fa48("43") ? wish !== undefined : stryMutAct_9fa48("42") ? false : (stryCov_9fa48("42", "43"), wish === undefined)) || (stryMutAct_9fa48("45") ? shortestDays <= wish || wish <= longestDays : stryMutAct_9fa48("44") ? false : (stryCov_9fa48("44", "45"), (stryMutAct_9fa48("48") ? shortestDays > wish : stryMutAct_9fa48("47") ? shortestDays < wish : stryMutAct_9fa48("46") ? true : (stryCov_9fa48("46", "47", "48"), shortestDays <= wish)) && (stryMutAct_9fa48("51") ? wish > longestDays : stryMutAct_9fa48("50") ? wish < longestDays : stryMutAct_9fa48("49") ? true : (stryCov_9fa48("49", "50", "51"), wish <= longestDays)))))) return stryMutAct_9fa48("52") ? ["Stryker was here"] : (stryCov_9fa48("52"), []);
    return stryMutAct_9fa48("53") ? [] : (stryCov_9fa48("53"), [stryMutAct_9fa48("54") ? {} : (stryCov_9fa48("54"), {
      code: stryMutAct_9fa48("55") ? "" : (stryCov_9fa48("55"), "beyond-limit"),
      path: stryMutAct_9fa48("56") ? [] : (stryCov_9fa48("56"), [...planting.path, stryMutAct_9fa48("57") ? "" : (stryCov_9fa48("57"), "interval")]),
      message: stryMutAct_9fa48("58") ? `` : (stryCov_9fa48("58"), `${wish} days is outside the interval of the rule ${rule.id}, ${shortestDays} to ${longestDays} days`),
      mend: stryMutAct_9fa48("59") ? `` : (stryCov_9fa48("59"), `write ${shortestDays} to ${longestDays} days, or write a rule of your own (\`rules:\`)`)
    })]);
  }
}
function plainEnd(sentence: string): string {
  if (stryMutAct_9fa48("60")) {
    {}
  } else {
    stryCov_9fa48("60");
    return stryMutAct_9fa48("61") ? sentence.replace(/\.$/, "") : (stryCov_9fa48("61"), sentence.trim().replace(stryMutAct_9fa48("62") ? /\./ : (stryCov_9fa48("62"), /\.$/), stryMutAct_9fa48("63") ? "Stryker was here!" : (stryCov_9fa48("63"), "")));
  }
}