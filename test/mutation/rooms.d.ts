export const mutatedRooms: readonly string[];
export function mutatedLines(every?: number): string[];
