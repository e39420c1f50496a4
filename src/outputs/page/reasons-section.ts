/** Why each planting is fed or not: rule, source, stages and the arithmetic, on demand. */
import type { Day } from "../../dates.js";
import {
  type Amounts,
  calciumIn,
  rateIn,
  rateMeasures,
  shortDate,
  shortDay,
} from "../../garden/index.js";
import type { FeedRule } from "../../rules/index.js";
import type { CanMix, Feeding, Plan, PlannedPlanting } from "../../season/index.js";
import {
  cropWords,
  evidenceWords,
  fedFromTo,
  figures,
  heatLimit,
  routeNames,
  stageWords,
  sumInFull,
  warmthSources,
  warmthWords,
  whyFedSo,
} from "../../words/index.js";
import { grouped } from "../../values.js";
import { section } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { dayTime } from "../round-card.js";

export function reasonsSection(plan: Plan): Html | undefined {
  if (plan.plantings.length === 0) return undefined;
  const feedings = grouped(fedIn(plan), ({ feeding }) => feeding.planting);
  const body = plan.plantings.map((planting) =>
    reasons(plan, planting, feedings.get(planting.id) ?? []),
  );
  return section("why", "Why each planting is fed, or not", body);
}

interface Fed {
  readonly day: Day;
  readonly mix: CanMix;
  readonly feeding: Feeding;
}

function fedIn({ rounds }: Plan): Fed[] {
  return rounds.flatMap(({ day, beds }) =>
    beds
      .flatMap(({ mixes }) => mixes)
      .flatMap((mix) => mix.feedings.map((feeding) => ({ day, mix, feeding }))),
  );
}

function reasons(plan: Plan, planting: PlannedPlanting, fed: readonly Fed[]): Html {
  const crop = cropWords(planting.cropName);
  const rules = plan.rules.filter(({ id }) => planting.rules.includes(id));
  // The target is inside, so that a link to it opens the details.
  return html`<details>
    <summary>
      <span class="who">${nameHtml(planting.name)}${planting.name !== crop && ` (${crop})`}</span>
      <span class="where">${nameHtml(planting.bedName)}, ${planting.fed ? "fed" : "not fed"}</span>
    </summary>
    <div id="why-${encodeURIComponent(planting.id)}" class="reason">
      <p dir="auto">${planting.reason}</p>
      ${planting.feeding && html`<p>${fedFromTo(planting.feeding, plan.garden.amounts)} ${whyFedSo(planting.feeding)}</p>`}
      ${rules.map((rule) => ruleBody(rule, planting.reason, plan.garden.amounts))}${calciumBody(plan, planting)}${stagesBody(planting, plan)}${feedingsBody(plan, fed)}
    </div>
  </details>`;
}

function ruleBody(rule: FeedRule, told: string, amounts: Amounts): Html {
  const { stock, waterWord } = rateMeasures[amounts];
  const rate = (mlPerL: number): string => figures(rateIn(amounts, mlPerL));
  const { shortestDays, targetDays, longestDays } = rule.interval;
  const heat = heatLimit(rule, amounts);
  const why = told.includes(rule.reason) ? [] : [rule.reason];
  const facts: readonly [string, string][] = [
    ["Rule", `${rule.id}${rule.own ? " (your own)" : ""}, against ${rule.disorder}`],
    [
      "Rate",
      `${rate(rule.rateMlPerL)} ${stock} of stock per ${waterWord}, ${figures(calciumIn(amounts, rule.calciumMgPerL))} mg of calcium per ${waterWord}; never above ${rate(rule.highestRateMlPerL)} ${stock} per ${waterWord}`,
    ],
    ["Every", `${targetDays} days, ${shortestDays} at the least and ${longestDays} at the most`],
    ...(heat === undefined ? [] : [["Heat", heat] as [string, string]]),
    ["Evidence", [evidenceWords[rule.evidence], ...why].join(" ")],
    ["Source", rule.source],
  ];
  return factList(facts);
}

/** What has no term of its own belongs to the one before. */
function factList(facts: readonly (readonly [string, string])[]): Html {
  const terms = facts.flatMap(([term], i) => (term === "" ? [] : [i]));
  const items = terms.map((at, n) => facts.slice(at, terms[n + 1]));
  return html`<dl>
    ${items.map(
      (those) =>
        html`<div>
          <dt>${those[0]?.[0]}</dt>
          ${those.map(([, text]) => html`<dd dir="auto">${text}</dd>`)}
        </div>`,
    )}
  </dl>`;
}

/** What can be expected of the feed, and the sum that it stands beside. */
function calciumBody({ calcium, garden }: Plan, { id }: PlannedPlanting): Html | undefined {
  const sum = calcium.find(({ planting }) => planting === id);
  if (sum === undefined || (sum.need === undefined && sum.verdicts.length === 0)) return undefined;
  return html`<h3>Calcium</h3>
    ${factList(sumInFull(sum, garden.amounts))}`;
}

function stagesBody({ stages }: PlannedPlanting, { garden, today }: Plan): Html | undefined {
  const { amounts } = garden;
  if (stages.length === 0) return undefined;
  const sources = warmthSources(stages);
  const items = stages.map((span, i) => {
    const { stage, from, to, bbch, origin } = span;
    // Most come from the same place as the one before.
    const told = [origin === stages[i - 1]?.origin ? [] : origin, warmthWords(span, amounts) ?? []];
    const source = told
      .flat()
      .map((text) => `: ${text}`)
      .join("");
    return html`<li>
      <b>${stageWords(stage)}</b>, ${shortDate(from, amounts, today)} to
      ${shortDate(to, amounts, today)} (BBCH ${bbch})${source}
    </li>`;
  });
  return html`<h3>Stages</h3>
    <ul class="stages">
      ${items}
    </ul>
    ${sources.length > 0 && html`<p>Warmth: ${sources.join("; ")}.</p>`}`;
}

function feedingsBody(plan: Plan, fed: readonly Fed[]): Html | undefined {
  const { amounts } = plan.garden;
  const rows = fed.map(({ day, mix, feeding }) => {
    const { earliest, latest } = feeding.window;
    return html`<li>
      ${dayTime(day, shortDay(day, amounts, plan.today))}: ${routeNames[mix.route].inLine},
      ${stageWords(feeding.stage)}; due ${shortDate(earliest, amounts, plan.today)} to
      ${shortDate(latest, amounts, plan.today)}${!feeding.inWindow && html` <b>(this day misses it)</b>`}.
      <span class="sum">${arithmetic(plan, mix, feeding)}</span>
    </li>`;
  });
  return rows.length === 0
    ? undefined
    : html`<h3>Feedings</h3>
        <ol class="feedings">
          ${rows}
        </ol>`;
}

/** From the rule's rate to what goes into the cans. */
function arithmetic({ garden: { amounts } }: Plan, mix: CanMix, feeding: Feeding): string {
  const { stock, stockMl, water, waterL } = rateMeasures[amounts];
  const rate = (mlPerL: number): string => `${figures(rateIn(amounts, mlPerL))} ${stock}/${water}`;
  const poured = (ml: number): string => `${figures(ml / stockMl)} ${stock}`;
  const level = feeding.level === 1 ? "" : ` × ${figures(feeding.level)} (level)`;
  const isAsRuled = Math.abs(feeding.baseRateMlPerL * feeding.level - mix.rateMlPerL) < 1e-9;
  const strength = isAsRuled ? "" : `, ${rate(mix.rateMlPerL)} at the strength of this bottle`;
  const ml = mix.rateMlPerL * feeding.waterL;
  const shared =
    mix.feedings.length > 1
      ? ", in cans shared with others of the bed"
      : Math.abs(mix.stockMl - ml) > 0.05
        ? `, measured out as ${poured(mix.stockMl)}`
        : "";
  return `${rate(feeding.baseRateMlPerL)}${level}${strength} × ${figures(feeding.waterL / waterL)} ${water} = ${poured(ml)}${shared}.`;
}
