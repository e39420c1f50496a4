/** What a making event tells in full. */
import { totalStockText, type Amounts } from "../garden/index.js";
import { visitOf, type MakingStep } from "../stock/index.js";
import { afterVisit, type Making } from "../words/index.js";

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
