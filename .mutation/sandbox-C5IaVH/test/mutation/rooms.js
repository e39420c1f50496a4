/** The rooms that a dose, a day or the past goes through, or those that `ROOMS` names. */
// @ts-nocheck

export const mutatedRooms = (process.env.ROOMS ?? "days,cans,stock,stages,rules,calendar,log").split(",");
