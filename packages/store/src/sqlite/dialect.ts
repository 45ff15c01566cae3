/** Kysely over the `node:sqlite` interface: only how statements are run is ours, the SQL is Kysely's own for SQLite. */
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type SqliteStatement as KyselyStatement,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDialect,
  SqliteDriver,
} from 'kysely';
import { messageOf } from '../trouble.ts';
import type { SqliteConnection, SqliteStatement, SqliteValue } from './connect.ts';
import { troubleOfSqlite } from './trouble.ts';

/** Statements kept ready; a plan of the server uses a dozen. */
const KEPT_STATEMENTS = 64;

export function nodeSqliteDialect(connection: SqliteConnection): Dialect {
  const database = asKyselyDatabase(connection);
  const plain = new SqliteDialect({ database });
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new WritingDriver({ database }),
    createQueryCompiler: () => plain.createQueryCompiler(),
    createIntrospector: (db) => plain.createIntrospector(db),
  };
}

/** Takes the lock for writing when a transaction begins, so that two writers wait for each other instead of one failing half-way. */
class WritingDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** When the disk is full SQLite has taken the transaction back by itself; the fault to be told is the first one. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } catch (error) {
      if (!/no transaction is active/i.test(messageOf(error))) throw error;
    }
  }
}

function asKyselyDatabase(connection: SqliteConnection): SqliteDatabase {
  const kept = new Map<string, KyselyStatement>();
  return {
    close: () => {
      kept.clear();
      // Statements not yet collected keep the log unmerged after `close`; merged now, the file is whole and may be copied alone.
      // On a full or read-only disk it cannot be, and the next start merges it.
      try {
        connection.exec('pragma wal_checkpoint(truncate)');
      } catch (error) {
        if (troubleOfSqlite(error) === null) throw error;
      } finally {
        connection.close();
      }
    },
    prepare: (sql) => {
      const ready = kept.get(sql);
      if (ready !== undefined) return ready;
      if (kept.size >= KEPT_STATEMENTS) kept.clear();
      const statement = asKyselyStatement(sql, connection.prepare(sql));
      kept.set(sql, statement);
      return statement;
    },
  };
}

function asKyselyStatement(sql: string, statement: SqliteStatement): KyselyStatement {
  return {
    reader: /^\s*(select|with|pragma|explain)\b/i.test(sql) || /\breturning\b/i.test(sql),
    all: (values) => statement.all(...(values as SqliteValue[])),
    run: (values) => statement.run(...(values as SqliteValue[])),
    iterate: (values) => statement.iterate(...(values as SqliteValue[])),
  };
}
