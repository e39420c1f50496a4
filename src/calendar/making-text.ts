/** The steps of a batch in words: what to do, how much of everything, and what to mind. */
import { type Amounts, totalStockText } from "../garden/index.js";
import { type MakingStep, visitOf } from "../stock/index.js";
import { afterVisit, type Making } from "../words/index.js";
/** What a making event tells in full. */

/** The recipe's steps at a visit to each batch, what comes after, and what to mind. */
export function visitDescription(
  visit: MakingStep,
  makings: readonly Making[],
  amounts: Amounts,
): readonly string[] {
  const stepsOf = ({ recipe }: Making) => recipe.steps.filter(({ key }) => visitOf[key] === visit);
  const cautions = makings.flatMap(stepsOf).flatMap((step) => step.cautions);
  return [
    ...makings.flatMap((making) => [
      `${making.batch.id} (${totalStockText(making.batch.volumeMl, amounts)}):`,
      ...stepsOf(making).map(({ text }) => `- ${text}`),
      `- ${afterVisit(visit, making.batch)}`,
      "",
    ]),
    ...[...new Set(cautions)].map((caution) => `Mind: ${caution}`),
  ];
}
