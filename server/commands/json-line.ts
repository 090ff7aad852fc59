export const jsonLine = (value: unknown): string => `${JSON.stringify(value)}\n`;
