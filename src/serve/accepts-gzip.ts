/** Whether Accept-Encoding asks for gzip, at least as much as for no coding (RFC 9110 section 12.5.3). */
export function acceptsGzip(field: string | undefined): boolean {
  if (field === undefined) return false;
  const weights = new Map<string, number>();
  for (const part of field.split(",")) {
    const [coding = "", ...parameters] = part.split(";");
    weights.set(coding.trim().toLowerCase(), weightOf(parameters));
  }
  const gzip = weights.get("gzip") ?? weights.get("x-gzip") ?? weights.get("*") ?? 0;
  return gzip > 0 && gzip >= (weights.get("identity") ?? 0);
}

function weightOf(parameters: readonly string[]): number {
  for (const parameter of parameters) {
    const match = /^\s*q\s*=\s*(0(?:\.\d{0,3})?|1(?:\.0{0,3})?)\s*$/i.exec(parameter);
    if (match) return Number(match[1]);
  }
  return 1;
}
