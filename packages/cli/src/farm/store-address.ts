/** Where the store is: the database of DATABASE_URL, else the file in the data folder. */
import { join } from 'node:path';
import { storeFile } from '@leywright/store';

export interface StoreAddress {
  readonly kind: 'file' | 'database';
  readonly url: string;
}

/** Null when neither is said. */
export function storeAddress(
  data: string | null,
  env: Readonly<Record<string, string | undefined>>,
): StoreAddress | null {
  if (data !== null) return { kind: 'file', url: join(data, storeFile) };
  const url = env['DATABASE_URL'];
  if (url !== undefined && url !== '') return { kind: 'database', url };
  const folder = env['LEYWRIGHT_DATA'];
  return folder === undefined || folder === '' ? null : { kind: 'file', url: join(folder, storeFile) };
}
