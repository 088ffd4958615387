/** Name of a part with its value, where the name does not say it. */
export const withValue = (name: string, value: string): string =>
  value === "" || name.includes(value) ? name : `${name} ${value}`;
