import { type Day, dayNumber } from '@leywright/measures';

/** Milliseconds since 1970 of a UTC instant written 2027-04-18T06:30:00Z, with or without decimals of a second. */
export function instantMs(instant: string): number {
  const hours = digits(instant, 11);
  const minutes = digits(instant, 14);
  const decimals = instant.length > 20 ? Number(`0${instant.slice(19, -1)}`) : 0;
  return (
    dayNumber(instant.slice(0, 10) as Day) * 86_400_000 +
    hours * 3_600_000 +
    minutes * 60_000 +
    digits(instant, 17) * 1000 +
    decimals * 1000
  );
}

function digits(text: string, at: number): number {
  return (text.charCodeAt(at) - 48) * 10 + text.charCodeAt(at + 1) - 48;
}
