/** Columns that hold JSON: checked by their shape whenever they are read. */
import { customType } from 'drizzle-orm/sqlite-core';
import type { z } from 'zod';

/** A text column of JSON. What does not fit `shape` is a bug, and is thrown when it is read. */
export function json<T>(name: string, shape: z.ZodType<T>) {
  const column = customType<{ data: T; driverData: string }>({
    dataType: () => 'text',
    toDriver: (value) => JSON.stringify(value),
    fromDriver: (text) => shape.parse(JSON.parse(text)),
  });
  return column(name);
}
