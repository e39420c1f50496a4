const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

// RFC 9110 section 5.6.7: the form to write, and two obsolete ones that must be read.
const fixed = /^\w{3}, (\d\d) (\w{3}) (\d{4}) (\d\d):(\d\d):(\d\d) GMT$/;
const rfc850 = /^\w{6,9}, (\d\d)-(\w{3})-(\d\d) (\d\d):(\d\d):(\d\d) GMT$/;
const asctime = /^\w{3} (\w{3}) ([ \d]\d) (\d\d):(\d\d):(\d\d) (\d{4})$/;

/** `Tue, 01 Jun 2027 06:00:00 GMT`, from seconds since 1970. */
export function httpDate(seconds: number): string {
  return new Date(seconds * 1000).toUTCString();
}

/**
 * Seconds since 1970, or undefined for what is no HTTP date. A year of two digits that would be more
 * than 50 years ahead is in the past (RFC 9110 section 5.6.7).
 */
export function parseHttpDate(text: string, nowS: number): number | undefined {
  const modern = fixed.exec(text);
  if (modern) {
    const [, day, month, year, ...time] = modern;
    return moment(Number(year), month, day, time);
  }
  const short = rfc850.exec(text);
  if (short) {
    const [, day, month, digits, ...time] = short;
    const thisYear = new Date(nowS * 1000).getUTCFullYear();
    const year = thisYear - (thisYear % 100) + Number(digits);
    return moment(year > thisYear + 50 ? year - 100 : year, month, day, time);
  }
  const old = asctime.exec(text);
  if (!old) return undefined;
  const [, month, day, hour, minute, second, year] = old;
  return moment(Number(year), month, day, [hour, minute, second]);
}

function moment(
  year: number,
  monthName: string | undefined,
  day: string | undefined,
  time: readonly (string | undefined)[],
): number | undefined {
  const month = months.indexOf(monthName ?? "");
  const [hour = 99, minute = 99, second = 99] = time.map(Number);
  // A leap second is a second of the next minute here.
  if (month === -1 || hour > 23 || minute > 59 || second > 60) return undefined;
  const date = new Date(Date.UTC(year, month, Number(day)));
  if (date.getUTCMonth() !== month || date.getUTCDate() !== Number(day)) return undefined;
  return date.getTime() / 1000 + hour * 3600 + minute * 60 + second;
}
