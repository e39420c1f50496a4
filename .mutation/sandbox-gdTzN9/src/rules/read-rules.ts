/** Rule files -> feed rules: the built-in ones, and the grower's own in the same form. */
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
import { type CropCatalogue, cropSuggestion, findCrop, type Habit, type StageName, stageNames } from "../crops/index.js";
import { absurdSize, type Bounds, located, type Parsed, parseQuantity, parseRate, parseTemperature, rateBounds, type SourceFile, type UnitContext } from "../garden/index.js";
import { type FilePath, type Finding, inFileOrder, type Result } from "../problem.js";
import type { SchemaCheck } from "../schema-check.js";
import { didYouMean } from "../suggest.js";
import { given } from "../values.js";
import type { Evidence, FeedRule } from "./rule.js";

/** A rule as `schemas/rules.schema.json` has it. */
interface RuleRow {
  readonly id: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly stages: readonly string[];
  readonly route?: FeedRule["route"];
  readonly disorder?: string;
  readonly rate: string;
  readonly calcium?: string;
  readonly interval: {
    readonly shortest: string;
    readonly target: string;
    readonly longest: string;
  };
  readonly first_within?: string;
  readonly highest_rate?: string;
  readonly stop_before_harvest?: string;
  readonly stop_before_last_pick?: string;
  readonly highest_temperature?: string;
  readonly feedings?: number;
  readonly habit?: Habit;
  readonly limits_reason?: string;
  readonly evidence?: Evidence;
  readonly by_default?: boolean;
  readonly reason?: string;
  readonly source?: string;
}
export interface RuleTables {
  /** Check against `schemas/rules.schema.json`. */
  readonly rulesCheck: SchemaCheck;
  readonly catalogue: CropCatalogue;
  /** Calcium in the stock for which rates are written, g/L. */
  readonly referenceStockGPerL: number;
}

/** All problems come with their place in the rule file. */
export function readRules(source: SourceFile, tables: RuleTables, context: UnitContext, own: boolean): Result<FeedRule[]> {
  if (stryMutAct_9fa48("336")) {
    {}
  } else {
    stryCov_9fa48("336");
    const findings = tables.rulesCheck(source.value);
    const fail = stryMutAct_9fa48("337") ? () => undefined : (stryCov_9fa48("337"), (() => {
      const fail = (): Result<FeedRule[]> => stryMutAct_9fa48("338") ? {} : (stryCov_9fa48("338"), {
        ok: stryMutAct_9fa48("339") ? true : (stryCov_9fa48("339"), false),
        problems: inFileOrder(findings.map(stryMutAct_9fa48("340") ? () => undefined : (stryCov_9fa48("340"), f => located(f, source))))
      });
      return fail;
    })());
    if (stryMutAct_9fa48("344") ? findings.length <= 0 : stryMutAct_9fa48("343") ? findings.length >= 0 : stryMutAct_9fa48("342") ? false : stryMutAct_9fa48("341") ? true : (stryCov_9fa48("341", "342", "343", "344"), findings.length > 0)) return fail();
    const rows = (source.value as {
      rules: readonly RuleRow[];
    }).rules;
    const ids = new Set<string>();
    const rules = rows.map((row, i) => {
      if (stryMutAct_9fa48("345")) {
        {}
      } else {
        stryCov_9fa48("345");
        const path: FilePath = stryMutAct_9fa48("346") ? [] : (stryCov_9fa48("346"), [stryMutAct_9fa48("347") ? "" : (stryCov_9fa48("347"), "rules"), i]);
        if (stryMutAct_9fa48("349") ? false : stryMutAct_9fa48("348") ? true : (stryCov_9fa48("348", "349"), ids.has(row.id))) findings.push(stryMutAct_9fa48("350") ? {} : (stryCov_9fa48("350"), {
          code: stryMutAct_9fa48("351") ? "" : (stryCov_9fa48("351"), "duplicate-id"),
          path: stryMutAct_9fa48("352") ? [] : (stryCov_9fa48("352"), [...path, stryMutAct_9fa48("353") ? "" : (stryCov_9fa48("353"), "id")]),
          message: stryMutAct_9fa48("354") ? `` : (stryCov_9fa48("354"), `the rule id \`${row.id}\` is used twice`),
          mend: stryMutAct_9fa48("355") ? "" : (stryCov_9fa48("355"), "give each rule an id of its own")
        }));
        ids.add(row.id);
        return ruleOf(row, path, tables, context, own, stryMutAct_9fa48("356") ? () => undefined : (stryCov_9fa48("356"), finding => findings.push(finding)));
      }
    });
    return (stryMutAct_9fa48("360") ? findings.length <= 0 : stryMutAct_9fa48("359") ? findings.length >= 0 : stryMutAct_9fa48("358") ? false : stryMutAct_9fa48("357") ? true : (stryCov_9fa48("357", "358", "359", "360"), findings.length > 0)) ? fail() : stryMutAct_9fa48("361") ? {} : (stryCov_9fa48("361"), {
      ok: stryMutAct_9fa48("362") ? false : (stryCov_9fa48("362"), true),
      value: rules
    });
  }
}
type Refuse = (key: FilePath, message: string, mend: string) => void;

/** Amounts of a rule; what is refused has a stand-in. */
function amountReaders(context: UnitContext, refuse: Refuse) {
  if (stryMutAct_9fa48("363")) {
    {}
  } else {
    stryCov_9fa48("363");
    const accept = (parsed: Parsed<number>, standIn: number, key: FilePath): number => {
      if (stryMutAct_9fa48("364")) {
        {}
      } else {
        stryCov_9fa48("364");
        if (stryMutAct_9fa48("366") ? false : stryMutAct_9fa48("365") ? true : (stryCov_9fa48("365", "366"), parsed.ok)) return parsed.value;
        refuse(key, parsed.message, parsed.mend);
        return standIn;
      }
    };
    const inBounds = (value: number, text: string, bounds: Bounds, key: FilePath): number => {
      if (stryMutAct_9fa48("367")) {
        {}
      } else {
        stryCov_9fa48("367");
        const absurd = absurdSize(text, value, bounds);
        if (stryMutAct_9fa48("370") ? absurd === undefined : stryMutAct_9fa48("369") ? false : stryMutAct_9fa48("368") ? true : (stryCov_9fa48("368", "369", "370"), absurd !== undefined)) refuse(key, absurd.message, absurd.mend);
        return value;
      }
    };
    return stryMutAct_9fa48("371") ? {} : (stryCov_9fa48("371"), {
      rate: stryMutAct_9fa48("372") ? () => undefined : (stryCov_9fa48("372"), (text: string, ...key: string[]) => inBounds(accept(parseRate(text, context), rateBounds.least, key), text, rateBounds, key)),
      /** No bound finds fault with the stand-in. */
      days: (text: string, ...key: string[]) => {
        if (stryMutAct_9fa48("373")) {
          {}
        } else {
          stryCov_9fa48("373");
          const days = accept(parseQuantity(text, stryMutAct_9fa48("374") ? "" : (stryCov_9fa48("374"), "time"), context), NaN, key);
          return Math.round(inBounds(days, text, (stryMutAct_9fa48("377") ? key[0] !== "interval" : stryMutAct_9fa48("376") ? false : stryMutAct_9fa48("375") ? true : (stryCov_9fa48("375", "376", "377"), key[0] === (stryMutAct_9fa48("378") ? "" : (stryCov_9fa48("378"), "interval")))) ? gapBounds : dayBounds, key));
        }
      },
      calcium: stryMutAct_9fa48("379") ? () => undefined : (stryCov_9fa48("379"), (text: string, standIn: number) => accept(parseQuantity(text, stryMutAct_9fa48("380") ? "" : (stryCov_9fa48("380"), "concentration"), context), standIn, stryMutAct_9fa48("381") ? [] : (stryCov_9fa48("381"), [stryMutAct_9fa48("382") ? "" : (stryCov_9fa48("382"), "calcium")]))),
      temperatureC: stryMutAct_9fa48("383") ? () => undefined : (stryCov_9fa48("383"), (text: string, key: string) => inBounds(accept(parseTemperature(text), NaN, stryMutAct_9fa48("384") ? [] : (stryCov_9fa48("384"), [key])), text, sprayBounds, stryMutAct_9fa48("385") ? [] : (stryCov_9fa48("385"), [key])))
    });
  }
}
function ruleOf(row: RuleRow, path: FilePath, tables: RuleTables, context: UnitContext, own: boolean, report: (finding: Finding) => void): FeedRule {
  if (stryMutAct_9fa48("386")) {
    {}
  } else {
    stryCov_9fa48("386");
    const refuse: Refuse = (key, message, mend) => {
      if (stryMutAct_9fa48("387")) {
        {}
      } else {
        stryCov_9fa48("387");
        report(stryMutAct_9fa48("388") ? {} : (stryCov_9fa48("388"), {
          code: stryMutAct_9fa48("389") ? "" : (stryCov_9fa48("389"), "rule"),
          path: stryMutAct_9fa48("390") ? [] : (stryCov_9fa48("390"), [...path, ...key]),
          message,
          mend
        }));
      }
    };
    const {
      rate,
      days,
      calcium,
      temperatureC
    } = amountReaders(context, refuse);
    const crops = cropsOf(row, tables.catalogue, refuse);
    const rateMlPerL = rate(row.rate, stryMutAct_9fa48("391") ? "" : (stryCov_9fa48("391"), "rate"));
    const interval = stryMutAct_9fa48("392") ? {} : (stryCov_9fa48("392"), {
      shortestDays: days(row.interval.shortest, stryMutAct_9fa48("393") ? "" : (stryCov_9fa48("393"), "interval"), stryMutAct_9fa48("394") ? "" : (stryCov_9fa48("394"), "shortest")),
      targetDays: days(row.interval.target, stryMutAct_9fa48("395") ? "" : (stryCov_9fa48("395"), "interval"), stryMutAct_9fa48("396") ? "" : (stryCov_9fa48("396"), "target")),
      longestDays: days(row.interval.longest, stryMutAct_9fa48("397") ? "" : (stryCov_9fa48("397"), "interval"), stryMutAct_9fa48("398") ? "" : (stryCov_9fa48("398"), "longest"))
    });
    const {
      shortestDays,
      targetDays,
      longestDays
    } = interval;
    if (stryMutAct_9fa48("401") ? shortestDays > targetDays && targetDays > longestDays : stryMutAct_9fa48("400") ? false : stryMutAct_9fa48("399") ? true : (stryCov_9fa48("399", "400", "401"), (stryMutAct_9fa48("404") ? shortestDays <= targetDays : stryMutAct_9fa48("403") ? shortestDays >= targetDays : stryMutAct_9fa48("402") ? false : (stryCov_9fa48("402", "403", "404"), shortestDays > targetDays)) || (stryMutAct_9fa48("407") ? targetDays <= longestDays : stryMutAct_9fa48("406") ? targetDays >= longestDays : stryMutAct_9fa48("405") ? false : (stryCov_9fa48("405", "406", "407"), targetDays > longestDays)))) refuse(stryMutAct_9fa48("408") ? [] : (stryCov_9fa48("408"), [stryMutAct_9fa48("409") ? "" : (stryCov_9fa48("409"), "interval")]), stryMutAct_9fa48("410") ? `` : (stryCov_9fa48("410"), `the interval is not in order: ${row.interval.shortest}, ${row.interval.target}, ${row.interval.longest}`), stryMutAct_9fa48("411") ? "" : (stryCov_9fa48("411"), "let the shortest be no more than the target, and the target no more than the longest"));
    const highestRateMlPerL = (stryMutAct_9fa48("414") ? row.highest_rate !== undefined : stryMutAct_9fa48("413") ? false : stryMutAct_9fa48("412") ? true : (stryCov_9fa48("412", "413", "414"), row.highest_rate === undefined)) ? stryMutAct_9fa48("415") ? 2 / rateMlPerL : (stryCov_9fa48("415"), 2 * rateMlPerL) : rate(row.highest_rate, stryMutAct_9fa48("416") ? "" : (stryCov_9fa48("416"), "highest_rate"));
    if (stryMutAct_9fa48("420") ? highestRateMlPerL >= rateMlPerL : stryMutAct_9fa48("419") ? highestRateMlPerL <= rateMlPerL : stryMutAct_9fa48("418") ? false : stryMutAct_9fa48("417") ? true : (stryCov_9fa48("417", "418", "419", "420"), highestRateMlPerL < rateMlPerL)) refuse((stryMutAct_9fa48("423") ? row.highest_rate !== undefined : stryMutAct_9fa48("422") ? false : stryMutAct_9fa48("421") ? true : (stryCov_9fa48("421", "422", "423"), row.highest_rate === undefined)) ? stryMutAct_9fa48("424") ? [] : (stryCov_9fa48("424"), [stryMutAct_9fa48("425") ? "" : (stryCov_9fa48("425"), "rate")]) : stryMutAct_9fa48("426") ? [] : (stryCov_9fa48("426"), [stryMutAct_9fa48("427") ? "" : (stryCov_9fa48("427"), "highest_rate")]), stryMutAct_9fa48("428") ? "" : (stryCov_9fa48("428"), "the highest rate is below the rate"), stryMutAct_9fa48("429") ? "" : (stryCov_9fa48("429"), "raise it or lower the rate"));
    const reckonedMgPerL = stryMutAct_9fa48("430") ? rateMlPerL / tables.referenceStockGPerL : (stryCov_9fa48("430"), rateMlPerL * tables.referenceStockGPerL);
    const calciumMgPerL = (stryMutAct_9fa48("433") ? row.calcium !== undefined : stryMutAct_9fa48("432") ? false : stryMutAct_9fa48("431") ? true : (stryCov_9fa48("431", "432", "433"), row.calcium === undefined)) ? reckonedMgPerL : calcium(row.calcium, reckonedMgPerL);
    if (stryMutAct_9fa48("437") ? Math.abs(calciumMgPerL - reckonedMgPerL) <= 0.01 * reckonedMgPerL : stryMutAct_9fa48("436") ? Math.abs(calciumMgPerL - reckonedMgPerL) >= 0.01 * reckonedMgPerL : stryMutAct_9fa48("435") ? false : stryMutAct_9fa48("434") ? true : (stryCov_9fa48("434", "435", "436", "437"), Math.abs(stryMutAct_9fa48("438") ? calciumMgPerL + reckonedMgPerL : (stryCov_9fa48("438"), calciumMgPerL - reckonedMgPerL)) > (stryMutAct_9fa48("439") ? 0.01 / reckonedMgPerL : (stryCov_9fa48("439"), 0.01 * reckonedMgPerL)))) refuse(stryMutAct_9fa48("440") ? [] : (stryCov_9fa48("440"), [stryMutAct_9fa48("441") ? "" : (stryCov_9fa48("441"), "calcium")]), stryMutAct_9fa48("442") ? `` : (stryCov_9fa48("442"), `the rate brings ${Math.round(reckonedMgPerL)} mg/L at ${tables.referenceStockGPerL} g of calcium per litre of stock, not ${Math.round(calciumMgPerL)}`), stryMutAct_9fa48("443") ? "" : (stryCov_9fa48("443"), "leave `calcium` out, or mend one of the two"));
    if (stryMutAct_9fa48("446") ? row.highest_temperature !== undefined || row.route !== "foliar" : stryMutAct_9fa48("445") ? false : stryMutAct_9fa48("444") ? true : (stryCov_9fa48("444", "445", "446"), (stryMutAct_9fa48("448") ? row.highest_temperature === undefined : stryMutAct_9fa48("447") ? true : (stryCov_9fa48("447", "448"), row.highest_temperature !== undefined)) && (stryMutAct_9fa48("450") ? row.route === "foliar" : stryMutAct_9fa48("449") ? true : (stryCov_9fa48("449", "450"), row.route !== (stryMutAct_9fa48("451") ? "" : (stryCov_9fa48("451"), "foliar")))))) refuse(stryMutAct_9fa48("452") ? [] : (stryCov_9fa48("452"), [stryMutAct_9fa48("453") ? "" : (stryCov_9fa48("453"), "highest_temperature")]), stryMutAct_9fa48("454") ? "" : (stryCov_9fa48("454"), "a drench has no highest temperature"), stryMutAct_9fa48("455") ? "" : (stryCov_9fa48("455"), "leave it out, or write `route: foliar` for a spray"));
    const disorder = stryMutAct_9fa48("456") ? tables.catalogue.crops.find(crop => crop.key === crops[0]).disorder : (stryCov_9fa48("456"), tables.catalogue.crops.find(stryMutAct_9fa48("457") ? () => undefined : (stryCov_9fa48("457"), crop => stryMutAct_9fa48("460") ? crop.key !== crops[0] : stryMutAct_9fa48("459") ? false : stryMutAct_9fa48("458") ? true : (stryCov_9fa48("458", "459", "460"), crop.key === crops[0])))?.disorder);
    return stryMutAct_9fa48("461") ? {} : (stryCov_9fa48("461"), {
      id: row.id,
      crops,
      groups: stryMutAct_9fa48("462") ? row.groups && [] : (stryCov_9fa48("462"), row.groups ?? (stryMutAct_9fa48("463") ? ["Stryker was here"] : (stryCov_9fa48("463"), []))),
      stages: stryMutAct_9fa48("464") ? row.stages : (stryCov_9fa48("464"), row.stages.filter(stryMutAct_9fa48("465") ? () => undefined : (stryCov_9fa48("465"), (s): s is StageName => stageNames.includes(s as StageName)))),
      route: stryMutAct_9fa48("466") ? row.route && "drench" : (stryCov_9fa48("466"), row.route ?? (stryMutAct_9fa48("467") ? "" : (stryCov_9fa48("467"), "drench"))),
      disorder: stryMutAct_9fa48("468") ? (row.disorder ?? disorder) && "a lack of calcium" : (stryCov_9fa48("468"), (stryMutAct_9fa48("469") ? row.disorder && disorder : (stryCov_9fa48("469"), row.disorder ?? disorder)) ?? (stryMutAct_9fa48("470") ? "" : (stryCov_9fa48("470"), "a lack of calcium"))),
      rateMlPerL,
      calciumMgPerL: reckonedMgPerL,
      interval,
      firstWithinDays: (stryMutAct_9fa48("473") ? row.first_within !== undefined : stryMutAct_9fa48("472") ? false : stryMutAct_9fa48("471") ? true : (stryCov_9fa48("471", "472", "473"), row.first_within === undefined)) ? targetDays : days(row.first_within, stryMutAct_9fa48("474") ? "" : (stryCov_9fa48("474"), "first_within")),
      highestRateMlPerL,
      limitsReason: stryMutAct_9fa48("475") ? row.limits_reason && "the rule sets this limit" : (stryCov_9fa48("475"), row.limits_reason ?? (stryMutAct_9fa48("476") ? "" : (stryCov_9fa48("476"), "the rule sets this limit"))),
      stopBeforeHarvestDays: (stryMutAct_9fa48("479") ? row.stop_before_harvest !== undefined : stryMutAct_9fa48("478") ? false : stryMutAct_9fa48("477") ? true : (stryCov_9fa48("477", "478", "479"), row.stop_before_harvest === undefined)) ? 0 : days(row.stop_before_harvest, stryMutAct_9fa48("480") ? "" : (stryCov_9fa48("480"), "stop_before_harvest")),
      stopBeforeLastPickDays: (stryMutAct_9fa48("483") ? row.stop_before_last_pick !== undefined : stryMutAct_9fa48("482") ? false : stryMutAct_9fa48("481") ? true : (stryCov_9fa48("481", "482", "483"), row.stop_before_last_pick === undefined)) ? 0 : days(row.stop_before_last_pick, stryMutAct_9fa48("484") ? "" : (stryCov_9fa48("484"), "stop_before_last_pick")),
      ...given(stryMutAct_9fa48("485") ? {} : (stryCov_9fa48("485"), {
        feedings: row.feedings,
        habit: habitOf(row, crops, tables.catalogue, refuse),
        highestTemperatureC: (stryMutAct_9fa48("488") ? row.highest_temperature !== undefined : stryMutAct_9fa48("487") ? false : stryMutAct_9fa48("486") ? true : (stryCov_9fa48("486", "487", "488"), row.highest_temperature === undefined)) ? undefined : temperatureC(row.highest_temperature, stryMutAct_9fa48("489") ? "" : (stryCov_9fa48("489"), "highest_temperature"))
      })),
      evidence: stryMutAct_9fa48("490") ? row.evidence && "common-practice" : (stryCov_9fa48("490"), row.evidence ?? (stryMutAct_9fa48("491") ? "" : (stryCov_9fa48("491"), "common-practice"))),
      byDefault: stryMutAct_9fa48("492") ? row.by_default && true : (stryCov_9fa48("492"), row.by_default ?? (stryMutAct_9fa48("493") ? false : (stryCov_9fa48("493"), true))),
      reason: stryMutAct_9fa48("494") ? row.reason && "the grower's own rule" : (stryCov_9fa48("494"), row.reason ?? (stryMutAct_9fa48("495") ? "" : (stryCov_9fa48("495"), "the grower's own rule"))),
      source: stryMutAct_9fa48("496") ? row.source && "the grower's own rule" : (stryCov_9fa48("496"), row.source ?? (stryMutAct_9fa48("497") ? "" : (stryCov_9fa48("497"), "the grower's own rule"))),
      own
    });
  }
}
const gapBounds: Bounds = stryMutAct_9fa48("498") ? {} : (stryCov_9fa48("498"), {
  least: 1,
  most: 120,
  words: stryMutAct_9fa48("499") ? "" : (stryCov_9fa48("499"), "1 to 120 days")
});
/** Air in which leaves are sprayed at all. */
const sprayBounds: Bounds = stryMutAct_9fa48("500") ? {} : (stryCov_9fa48("500"), {
  least: 5,
  most: 45,
  words: stryMutAct_9fa48("501") ? "" : (stryCov_9fa48("501"), "5 to 45 C")
});
const dayBounds: Bounds = stryMutAct_9fa48("502") ? {} : (stryCov_9fa48("502"), {
  least: 0,
  most: 366,
  words: stryMutAct_9fa48("503") ? "" : (stryCov_9fa48("503"), "0 to 366 days")
});
function cropsOf(row: RuleRow, catalogue: CropCatalogue, refuse: Refuse): string[] {
  if (stryMutAct_9fa48("504")) {
    {}
  } else {
    stryCov_9fa48("504");
    const groups = new Set(catalogue.crops.map(stryMutAct_9fa48("505") ? () => undefined : (stryCov_9fa48("505"), crop => crop.group)));
    for (const [i, group] of (stryMutAct_9fa48("506") ? row.groups && [] : (stryCov_9fa48("506"), row.groups ?? (stryMutAct_9fa48("507") ? ["Stryker was here"] : (stryCov_9fa48("507"), [])))).entries()) if (stryMutAct_9fa48("510") ? false : stryMutAct_9fa48("509") ? true : stryMutAct_9fa48("508") ? groups.has(group) : (stryCov_9fa48("508", "509", "510"), !groups.has(group))) refuse(stryMutAct_9fa48("511") ? [] : (stryCov_9fa48("511"), [stryMutAct_9fa48("512") ? "" : (stryCov_9fa48("512"), "groups"), i]), stryMutAct_9fa48("513") ? `` : (stryCov_9fa48("513"), `the crop group \`${group}\` is not known`), didYouMean(group, groups, stryMutAct_9fa48("514") ? `` : (stryCov_9fa48("514"), `the groups are ${(stryMutAct_9fa48("515") ? [] : (stryCov_9fa48("515"), [...groups])).join(stryMutAct_9fa48("516") ? "" : (stryCov_9fa48("516"), ", "))}`)));
    if (stryMutAct_9fa48("519") ? row.crops === undefined || row.groups === undefined : stryMutAct_9fa48("518") ? false : stryMutAct_9fa48("517") ? true : (stryCov_9fa48("517", "518", "519"), (stryMutAct_9fa48("521") ? row.crops !== undefined : stryMutAct_9fa48("520") ? true : (stryCov_9fa48("520", "521"), row.crops === undefined)) && (stryMutAct_9fa48("523") ? row.groups !== undefined : stryMutAct_9fa48("522") ? true : (stryCov_9fa48("522", "523"), row.groups === undefined)))) refuse(stryMutAct_9fa48("524") ? ["Stryker was here"] : (stryCov_9fa48("524"), []), stryMutAct_9fa48("525") ? "" : (stryCov_9fa48("525"), "the rule names no crop"), stryMutAct_9fa48("526") ? "" : (stryCov_9fa48("526"), "add `crops: [tomato]` or `groups: [solanaceous]`"));
    return (stryMutAct_9fa48("527") ? row.crops && [] : (stryCov_9fa48("527"), row.crops ?? (stryMutAct_9fa48("528") ? ["Stryker was here"] : (stryCov_9fa48("528"), [])))).map((word, i) => {
      if (stryMutAct_9fa48("529")) {
        {}
      } else {
        stryCov_9fa48("529");
        const crop = findCrop(word, catalogue);
        if (stryMutAct_9fa48("532") ? crop !== undefined : stryMutAct_9fa48("531") ? false : stryMutAct_9fa48("530") ? true : (stryCov_9fa48("530", "531", "532"), crop === undefined)) refuse(stryMutAct_9fa48("533") ? [] : (stryCov_9fa48("533"), [stryMutAct_9fa48("534") ? "" : (stryCov_9fa48("534"), "crops"), i]), stryMutAct_9fa48("535") ? `` : (stryCov_9fa48("535"), `the crop \`${word}\` is not known`), cropSuggestion(word, catalogue));
        return stryMutAct_9fa48("536") ? crop?.key && word : (stryCov_9fa48("536"), (stryMutAct_9fa48("537") ? crop.key : (stryCov_9fa48("537"), crop?.key)) ?? word);
      }
    });
  }
}
function habitOf({
  habit,
  groups = stryMutAct_9fa48("538") ? ["Stryker was here"] : (stryCov_9fa48("538"), [])
}: RuleRow, crops: readonly string[], catalogue: CropCatalogue, refuse: Refuse): Habit | undefined {
  if (stryMutAct_9fa48("539")) {
    {}
  } else {
    stryCov_9fa48("539");
    const withHabit = stryMutAct_9fa48("540") ? catalogue.crops : (stryCov_9fa48("540"), catalogue.crops.filter(stryMutAct_9fa48("541") ? () => undefined : (stryCov_9fa48("541"), ({
      usualHabit
    }) => stryMutAct_9fa48("544") ? usualHabit === undefined : stryMutAct_9fa48("543") ? false : stryMutAct_9fa48("542") ? true : (stryCov_9fa48("542", "543", "544"), usualHabit !== undefined))));
    const isOf = stryMutAct_9fa48("545") ? withHabit.every(({
      key,
      group
    }) => crops.includes(key) || groups.includes(group)) : (stryCov_9fa48("545"), withHabit.some(stryMutAct_9fa48("546") ? () => undefined : (stryCov_9fa48("546"), ({
      key,
      group
    }) => stryMutAct_9fa48("549") ? crops.includes(key) && groups.includes(group) : stryMutAct_9fa48("548") ? false : stryMutAct_9fa48("547") ? true : (stryCov_9fa48("547", "548", "549"), crops.includes(key) || groups.includes(group)))));
    if (stryMutAct_9fa48("552") ? habit !== undefined || !isOf : stryMutAct_9fa48("551") ? false : stryMutAct_9fa48("550") ? true : (stryCov_9fa48("550", "551", "552"), (stryMutAct_9fa48("554") ? habit === undefined : stryMutAct_9fa48("553") ? true : (stryCov_9fa48("553", "554"), habit !== undefined)) && (stryMutAct_9fa48("555") ? isOf : (stryCov_9fa48("555"), !isOf)))) refuse(stryMutAct_9fa48("556") ? [] : (stryCov_9fa48("556"), [stryMutAct_9fa48("557") ? "" : (stryCov_9fa48("557"), "habit")]), stryMutAct_9fa48("558") ? `` : (stryCov_9fa48("558"), `no crop of this rule grows both as a bush and as a cordon`), stryMutAct_9fa48("559") ? `` : (stryCov_9fa48("559"), `leave \`habit\` out; it is for ${withHabit.map(stryMutAct_9fa48("560") ? () => undefined : (stryCov_9fa48("560"), ({
      name
    }) => name)).join(stryMutAct_9fa48("561") ? "" : (stryCov_9fa48("561"), ", "))}`));
    return habit;
  }
}

/** The grower's rules stand before the built-in ones and take the place of those with their id. */
export function mergeRules(builtIn: readonly FeedRule[], own: readonly FeedRule[]): FeedRule[] {
  if (stryMutAct_9fa48("562")) {
    {}
  } else {
    stryCov_9fa48("562");
    const ownIds = new Set(own.map(stryMutAct_9fa48("563") ? () => undefined : (stryCov_9fa48("563"), rule => rule.id)));
    return stryMutAct_9fa48("564") ? [] : (stryCov_9fa48("564"), [...own, ...(stryMutAct_9fa48("565") ? builtIn : (stryCov_9fa48("565"), builtIn.filter(stryMutAct_9fa48("566") ? () => undefined : (stryCov_9fa48("566"), rule => stryMutAct_9fa48("567") ? ownIds.has(rule.id) : (stryCov_9fa48("567"), !ownIds.has(rule.id))))))]);
  }
}