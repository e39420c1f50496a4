/** The season as strips, each drawn from its own top edge: the calendar, beds, stock. */
import type { Day, DaySpan } from "../../dates.js";
import { monthName, type Route, shortDate } from "../../garden/index.js";
import type { BedRound, CanMix, Plan, PlannedPlanting } from "../../season/index.js";
import { grouped } from "../../values.js";
import { feedingMark, isolated, plain, plantingWords, stageWords } from "../../words/index.js";
import { type Content, html, type Html } from "../html.js";
import { nextRound } from "../plan-facts.js";
import { widthEm } from "../text-width.js";
import { type Canvas, lineOfText, textThatFits } from "./fitted-text.js";
import { type Mark, routeMarks } from "./picture-marks.js";
import { monthsOf, type TimeScale } from "./time-scale.js";

export interface PictureContext {
  readonly plan: Plan;
  readonly scale: TimeScale;
  readonly canvas: Canvas;
  readonly today?: Day;
}

export interface Strip {
  readonly heightPx: number;
  readonly body: Html;
}

export interface BedStrip extends Strip {
  readonly planting: PlannedPlanting;
}

/** What fits on one line of the narrowest picture. */
const lineEm = 25;
const nameHeight = 17;
const barHeight = 14;
const marksHeight = 18;

/** Month names and a line where each month begins. */
export function monthStrip({ scale, canvas }: PictureContext): Strip {
  const names = monthsOf(scale.span).map((month) => {
    const place = { x: scale.at(month.from), y: 14, share: scale.share(month), kind: "soft inset" };
    const name = monthName(month.from);
    const long = canvas.kind === "file" && textThatFits(name, place, canvas);
    // Three letters are 28 px at the most, and no screen is narrower than 300.
    const short =
      place.share * 300 >= 20 && textThatFits(name.slice(0, 3), { ...place, share: 1 }, canvas);
    return long || short;
  });
  return { heightPx: 20, body: html`${names}` };
}

/** Lines behind all strips of one drawing. */
export function backgroundLines({ scale, today }: PictureContext, heightPx: number): Html {
  const months = monthsOf(scale.span).map(
    ({ from }) =>
      html`<line
        class="grid"
        x1="${scale.at(from)}"
        x2="${scale.at(from)}"
        y1="0"
        y2="${heightPx}"
      />`,
  );
  const now =
    today !== undefined &&
    scale.shows({ from: today, to: today }) &&
    html`<line
      class="today"
      x1="${scale.midst(today)}"
      x2="${scale.midst(today)}"
      y1="0"
      y2="${heightPx}"
    />`;
  return html`${months}${now}`;
}

export function roundStrip({ plan, scale, canvas, today }: PictureContext): Strip {
  const next = today === undefined ? undefined : nextRound(plan, today);
  const words =
    plan.rounds.length === 0
      ? "No rounds in this season"
      : today === undefined
        ? "Rounds"
        : next === undefined
          ? "Rounds: all done"
          : `Rounds: the next is on ${shortDate(next.day, plan.garden.amounts)}`;
  const marks = plan.rounds.map(({ day }) => {
    const kind = `round-mark${day === next?.day ? " next" : ""}`;
    return mark({ shape: "fr-round", kind }, scale.midst(day), 27);
  });
  return {
    heightPx: 40,
    body: html`${lineOfText(words, 14, "strong halo", canvas)}${marks}`,
  };
}

/** One strip a planting, the first of a bed with several under the name of the bed. */
export function bedStrips(context: PictureContext): readonly BedStrip[] {
  return [...grouped(context.plan.plantings, ({ bed }) => bed).values()].flatMap((plantings) =>
    plantings.map((planting, i) => {
      const alone = plantings.length === 1 && widthEm(bedAndPlanting(planting)) <= lineEm;
      return plantingStrip(planting, context, alone, !alone && i === 0);
    }),
  );
}

function plantingStrip(
  planting: PlannedPlanting,
  context: PictureContext,
  alone: boolean,
  bedFirst: boolean,
): BedStrip {
  const { scale, canvas, plan } = context;
  const top = bedFirst ? nameHeight : 0;
  const name = nameInPicture(planting);
  const words = alone ? bedAndPlanting(planting) : plantingAndFate(planting);
  const barY = top + nameHeight;
  const bars = planting.stages.filter(scale.shows).map((span) => {
    const title = `${name}: ${stageWords(span.stage)}, ${shortDate(span.from, plan.garden.amounts)} to ${shortDate(span.to, plan.garden.amounts)}`;
    const label = textThatFits(
      stageWords(span.stage),
      // The text begins a little after the bar does.
      { x: scale.at(span.from), y: barY + 11, share: scale.share(span), kind: "halo inset" },
      canvas,
    );
    return html`<rect
        class="bar"
        fill="url(#fr-${span.stage})"
        x="${scale.at(span.from)}"
        y="${barY}"
        width="${scale.width(span)}"
        height="${barHeight}"
        ><title>${title}</title></rect
      >${label}`;
  });
  const feedings = plan.rounds.flatMap(({ day, beds }) =>
    routesFor(beds, planting.id).map((route) =>
      mark(
        routeMarks[route],
        scale.midst(day),
        barY + barHeight + 9,
        feedingMark(name, route, shortDate(day, plan.garden.amounts)),
      ),
    ),
  );
  const bedLine = bedFirst && lineOfText(planting.bedName, 13, "strong halo", canvas);
  const line = lineOfText(words, top + 13, alone ? "strong halo" : "halo", canvas);
  return {
    planting,
    heightPx: barY + barHeight + (planting.fed ? marksHeight : 0) + 8,
    body: html`${bedLine}${line}${bars}${feedings}`,
  };
}

function bedAndPlanting(planting: PlannedPlanting): string {
  return `${isolated(planting.bedName)}: ${plantingAndFate(planting)}`;
}

function plantingAndFate(planting: PlannedPlanting): string {
  return `${nameInPicture(planting)}${planting.fed ? "" : " (not fed)"}`;
}

export function nameInPicture(planting: PlannedPlanting): string {
  return plantingWords(plain, planting, isolated(planting.name));
}

function routesFor(beds: readonly BedRound[], planting: string): readonly Route[] {
  const mixes = beds.flatMap((bed) => bed.mixes).filter((mix) => feeds(mix, planting));
  return [...new Set(mixes.map(({ route }) => route))];
}

export function feeds({ feedings }: CanMix, planting: string): boolean {
  return feedings.some((feeding) => feeding.planting === planting);
}

export function mark({ shape, kind }: Mark, x: string, y: number, title?: Content): Html {
  return html`<use href="#${shape}" class="${kind}" x="${x}" y="${y}"
    >${title !== undefined && html`<title>${title}</title>`}</use
  >`;
}

/** A rectangle over a span, when any of it shows. */
export function spanRect(
  scale: TimeScale,
  span: DaySpan,
  kind: string,
  y: number,
  height: number,
  fill?: string,
): Html | undefined {
  if (!scale.shows(span) || span.to < span.from) return undefined;
  return html`<rect
    class="${kind}"
    ${fill !== undefined && html` fill="${fill}"`}
    x="${scale.at(span.from)}"
    y="${y}"
    width="${scale.width(span)}"
    height="${height}"
  />`;
}
