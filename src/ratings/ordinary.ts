/**
 * Parts as they are ordinarily sold, for plans whose parts are not bought yet. A door of its own beside `tables.ts`, so that
 * only what chooses parts carries these tables.
 */

import { lazy } from './lazy.ts';
import type { FieldsRow, PlugRow, SizesRow, SwitchRow } from './part-rows.ts';
import type { Table } from './table-rows.ts';
import fieldsFile from './tables/ordinary/fields.json' with { type: 'json' };
import partsFile from './tables/ordinary/parts.json' with { type: 'json' };
import plugsFile from './tables/ordinary/plugs.json' with { type: 'json' };
import sizesFile from './tables/ordinary/sizes.json' with { type: 'json' };

export const ordinaryTables = {
  fields: lazy<Table<FieldsRow>>(fieldsFile),
  parts: lazy<Table<SwitchRow>>(partsFile),
  plugs: lazy<Table<PlugRow>>(plugsFile),
  sizes: lazy<Table<SizesRow>>(sizesFile),
} as const;
