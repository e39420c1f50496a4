/** Whether Accept-Encoding asks for gzip, at least as much as for no coding (RFC 9110 section 12.5.3). */
export function acceptsGzip(field = ""): boolean {
  const gzip = weightIn(field, gzipOrAlias) ?? weightIn(field, anyCoding) ?? 0;
  return gzip > 0 && gzip >= (weightIn(field, identity) ?? 0);
}

const gzipOrAlias = weighed("(?:x-)?gzip");
const anyCoding = weighed("\\*");
const identity = weighed("identity");

/** A coding in a list, and the `q` beside it. */
function weighed(coding: string): RegExp {
  return new RegExp(
    `(?:^|,)[ \\t]*${coding}[ \\t]*(?:;[ \\t]*q=([\\d.]+)|;[^,]*)?[ \\t]*(?:,|$)`,
    "i",
  );
}

function weightIn(field: string, coding: RegExp): number | undefined {
  const match = coding.exec(field);
  return match ? Number(match[1] ?? 1) : undefined;
}
