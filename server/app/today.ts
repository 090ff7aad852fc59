/** The day by this machine's clock and time zone, YYYY-MM-DD. */
export function today(now: Date = new Date()): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
