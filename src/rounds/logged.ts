import type { CanDemand } from "./demands.js";
import type { GivenFeeding } from "./log.js";

/** Demands of the past with the millilitres that the log holds, where it holds them. */
export function withLogged(
  demands: readonly CanDemand[],
  given: readonly GivenFeeding[],
): CanDemand[] {
  return demands.map((demand) => {
    const shares = demand.feedings.map((feeding) =>
      given.find((g) => g.planting === feeding.planting && g.day === demand.day),
    );
    const ml = shares.map((share) => share?.stockMl);
    if (ml.some((amount) => amount === undefined) || demand.waterL === 0) return demand;
    const totalMl = ml.reduce((sum: number, amount) => sum + (amount ?? 0), 0);
    return { ...demand, rate: { kind: "fixed", mlPerL: totalMl / demand.waterL } };
  });
}
