/** Today where the reader is, as year-month-day: the worker and everything behind it have no clock. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
