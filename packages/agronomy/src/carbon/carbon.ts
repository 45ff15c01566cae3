/** The topsoil's carbon and the humus index under one word; the two are never added. */
export * as humusBalance from './humus-balance.ts';
export * as rothc from './rothc.ts';
export * as rates from './rothc-rates.ts';
export * as start from './start-pools.ts';
