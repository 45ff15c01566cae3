/** What an error of PostgreSQL, or of the way to it, means to a person. */
import type { StoreTroubleCode } from '../trouble.ts';

/** By SQLSTATE (PostgreSQL, appendix A) or by the name the network gives. */
const meanings: Readonly<Record<string, StoreTroubleCode>> = {
  '53100': 'disk-full',
  '25006': 'read-only-store',
  '55P03': 'store-busy',
  '40P01': 'store-busy',
  '53300': 'store-busy',
  XX001: 'damaged-database',
  XX002: 'damaged-database',
  '28000': 'store-unreachable',
  '28P01': 'store-unreachable',
  '3D000': 'store-unreachable',
  '57P01': 'store-unreachable',
  '57P02': 'store-unreachable',
  '57P03': 'store-unreachable',
  ECONNREFUSED: 'store-unreachable',
  ECONNRESET: 'store-unreachable',
  ENOTFOUND: 'store-unreachable',
  EAI_AGAIN: 'store-unreachable',
  ETIMEDOUT: 'store-unreachable',
  EPIPE: 'store-unreachable',
};

export function troubleOfPostgres(error: unknown): StoreTroubleCode | null {
  if (error instanceof AggregateError) return troubleOfPostgres(error.errors[0]);
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('08')) return 'store-unreachable';
  const meaning = meanings[code];
  if (meaning !== undefined) return meaning;
  return error instanceof Error && /connection terminated|timeout exceeded when trying to connect/i.test(error.message)
    ? 'store-unreachable'
    : null;
}
