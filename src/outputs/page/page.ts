/** The garden's page: what the day asks for, the next round, then the season. */
import type { Day } from "../../dates.js";
import { counted, dayText } from "../../garden/index.js";
import { type Problem, problemLines } from "../../problem.js";
import type { Plan } from "../../season/index.js";
import { given } from "../../values.js";
import { bedLines, noRound } from "../../words/index.js";
import { documentOf, section } from "../document.js";
import { html, type Html, nameHtml, trusted } from "../html.js";
import { pictureDefs } from "../picture/index.js";
import { agendaSection } from "./agenda-section.js";
import { calciumSection } from "./calcium-section.js";
import { makingSection } from "./making-section.js";
import { nextSection } from "./next-section.js";
import { originSection } from "./origin-section.js";
import { pageScript } from "./page-script.js";
import { pageStyle } from "./page-style.js";
import { reasonsSection } from "./reasons-section.js";
import { seasonSection } from "./season-section.js";
import { todaySection } from "./today-section.js";
import {
  assumptionsSection,
  generalCautions,
  notesSection,
  warningsSection,
} from "./told-sections.js";
import { waterSection, weekWater } from "./water-section.js";

export interface PageOptions {
  /** In the garden's zone. Without it the first round of the season comes first. */
  readonly today?: Day;
  readonly subscribe?: SubscribeLinks;
  /** Of the garden file as it stands now; the plan is then the last good one. */
  readonly problems?: readonly Problem[];
  /** When the garden file was last read, as it is to be shown. */
  readonly updated?: string;
  /** When the plan shown was made, if the file is broken since. */
  readonly lastGood?: string;
}

export interface SubscribeLinks {
  /** `webcal://...`, or as `http`. */
  readonly webcal: string;
  /** Address of the calendar, or its bare file name where it lies beside the page. */
  readonly http: string;
  /** Leads to this page. An `<svg>` element made by the caller, put in as it is. */
  readonly qrSvg?: string;
}

/**
 * One HTML file that asks nothing of the network, works without script, and prints. Its only inline
 * style is {@link pageStyle}, its only script {@link pageScript}: a Content-Security-Policy of
 * `default-src 'none'; img-src data:; style-src '<hash>'; script-src '<hash>'` lets all of it through.
 */
export function gardenPage(made: Plan, options: PageOptions = {}): string {
  const { today } = options;
  const plan = { ...made, today: today ?? made.today };
  const lines = bedLines(plan);
  const { garden } = plan;
  const sections = {
    rounds: agendaSection(plan, lines, today),
    season: seasonSection(plan, options),
    water: waterSection(plan),
    origin: originSection(plan),
    calcium: calciumSection(plan),
    making: makingSection(plan),
    notes: notesSection(plan),
    warnings: warningsSection(plan),
    why: reasonsSection(plan),
    assumptions: assumptionsSection(plan),
    subscribe: options.subscribe && subscribeSection(options.subscribe),
  };
  return documentOf({
    title: `${plan.garden.name}: feeding plan`,
    style: pageStyle,
    script: pageScript,
    data: {
      zone: garden.timezone,
      end: garden.season.to,
      done: noRound(plan),
      ...given({ today }),
    },
    body: html`<a class="skip" href="#today">To what there is to do</a>
      <svg class="defs" width="0" height="0" aria-hidden="true">${pictureDefs()}</svg>
      <header>
        <h1>${nameHtml(plan.garden.name)}</h1>
        ${troubleBox(options)}
      </header>
      <main>
        ${todaySection(plan, today)} ${nextSection(plan, lines, today)} ${weekWater(plan, today)}
        <div class="on-paper">${generalCautions}</div>
        <nav aria-label="On this page">
          <ul>
            ${navItems(plan, sections)}
          </ul>
        </nav>
        ${Object.values(sections)}
      </main>
      <footer>
        ${generalCautions}
        <p>
          ${today !== undefined && `Written on ${dayText(today, plan.garden.amounts)}. `}${options.updated !== undefined && `Garden file read ${options.updated}.`}
        </p>
      </footer>`,
  });
}

const sectionNames = {
  rounds: "All days",
  season: "Season",
  water: "Water",
  origin: "Where calcium comes from",
  calcium: "In a can",
  making: "Stock",
  notes: "What changed",
  warnings: "Warnings",
  why: "Why",
  assumptions: "Taken as usual",
  subscribe: "Subscribe",
} as const;
type Sections = Readonly<Record<keyof typeof sectionNames, Html | undefined>>;

function navItems(plan: Plan, sections: Sections): readonly Html[] {
  return Object.entries(sectionNames).flatMap(([id, name]) => {
    if (sections[id as keyof Sections] === undefined) return [];
    const words = id === "warnings" ? counted(plan.warnings.length, "warning") : name;
    return [html`<li><a href="#${id}">${words}</a></li>`];
  });
}

function troubleBox({ problems = [], lastGood }: PageOptions): Html | undefined {
  if (problems.length === 0) return undefined;
  return html`<div class="trouble" role="alert">
    <p>
      <b>The garden file has ${counted(problems.length, "problem")}.</b> This is the last good
      plan${lastGood !== undefined && `, of ${lastGood}`}.
    </p>
    <ul>
      ${problemLines(problems).map((line) => html`<li dir="auto">${line}</li>`)}
    </ul>
  </div>`;
}

function subscribeSection({ webcal, http, qrSvg }: SubscribeLinks): Html {
  // Only addresses of a calendar: never one that runs as script.
  const safe = /^webcals?:\/\//i.test(webcal) ? webcal : undefined;
  const link = /^https?:\/\//i.test(http) ? http : undefined;
  const beside = /^[a-z0-9-]+\.ics$/.test(http) ? http : undefined;
  const body = html`<div class="links">
    <div>
      ${
        safe !== undefined &&
        html`<p><a class="button" href="${safe}">Subscribe to the calendar</a></p>
          <p class="address">${safe}</p>`
      }
      ${
        link !== undefined &&
        html`<p>Or put this address into your calendar program:</p>
          <p class="address"><a href="${link}">${link}</a></p>`
      }
      ${
        beside !== undefined &&
        html`<p><a class="button" href="${beside}">The calendar file</a></p>
          <p>To subscribe, put the address of this link into your calendar program.</p>`
      }
    </div>
    ${qrSvg !== undefined && html`<div class="qr" role="img" aria-label="QR code of this page's address">${trusted(qrSvg)}</div>`}
  </div>`;
  return section("subscribe", "The calendar", body);
}
