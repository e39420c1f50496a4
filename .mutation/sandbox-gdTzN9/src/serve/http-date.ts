// @ts-nocheck
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

// RFC 9110 section 5.6.7: the form to write, and two obsolete ones that must be read.
const forms = [
  /^\w{3}, (?<day>\d\d) (?<month>\w{3}) (?<year>\d{4}) (?<time>\d\d:\d\d:\d\d) GMT$/,
  /^\w{6,9}, (?<day>\d\d)-(?<month>\w{3})-(?<year>\d\d) (?<time>\d\d:\d\d:\d\d) GMT$/,
  /^\w{3} (?<month>\w{3}) (?<day>[ \d]\d) (?<time>\d\d:\d\d:\d\d) (?<year>\d{4})$/,
];

/** `Tue, 01 Jun 2027 06:00:00 GMT`, from seconds since 1970. */
export function httpDate(seconds: number): string {
  return new Date(seconds * 1000).toUTCString();
}

/** Seconds since 1970, or undefined for what is no HTTP date. */
export function parseHttpDate(text: string, nowS: number): number | undefined {
  const parts = forms.map((form) => form.exec(text)?.groups).find((groups) => groups);
  const { day, month = "", year = "", time = "" } = parts ?? {};
  const [hour = 99, minute = 99, second = 99] = time.split(":").map(Number);
  // A leap second is a second of the next minute here.
  if (hour > 23 || minute > 59 || second > 60) return undefined;
  const at = months.indexOf(month);
  const date = new Date(Date.UTC(fullYear(year, nowS), at, Number(day)));
  if (date.getUTCMonth() !== at || date.getUTCDate() !== Number(day)) return undefined;
  return date.getTime() / 1000 + hour * 3600 + minute * 60 + second;
}

/** Two digits that would be more than 50 years ahead are in the past (RFC 9110 section 5.6.7). */
function fullYear(digits: string, nowS: number): number {
  if (digits.length > 2) return Number(digits);
  const thisYear = new Date(nowS * 1000).getUTCFullYear();
  const year = thisYear - (thisYear % 100) + Number(digits);
  return year > thisYear + 50 ? year - 100 : year;
}
