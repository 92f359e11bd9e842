// What the API takes and gives about a season folder's files.
import { z } from 'zod';
import { House, Problem } from '../../planner/index.ts';

const fileName = z.string().max(200);

export const ImportRequest = z
  .strictObject({
    files: z
      .record(fileName, z.string().max(8_000_000))
      .describe(
        'File name to text: house.json, brews.csv, tanks.csv, yeasts.csv, jars.csv, counts.csv',
      ),
    columns: z
      .record(fileName, z.record(z.string().max(2000), z.string().max(100)))
      .default({})
      .describe(
        'For each file: what a cell of its first line means, as a column that is known; "": leave it aside',
      ),
    corrections: z
      .array(
        z.strictObject({
          file: fileName,
          line: z.number().int().min(1).max(1_000_000),
          column: z.string().max(100).describe('The column as it is known'),
          text: z.string().max(10_000),
        }),
      )
      .max(2000)
      .default([])
      .describe('Cells to be read as if this stood there'),
    onto: z
      .unknown()
      .optional()
      .describe(
        'A house from which the files that are missing are taken; null: all have to be there',
      ),
    apply: z.boolean().default(false).describe('false: only show what would come of it'),
    startOver: z
      .boolean()
      .default(false)
      .describe('Begin a new season: record and plan of the old one are put away'),
  })
  .meta({ id: 'ImportRequest' });

export const ImportTable = z
  .strictObject({
    file: z.string(),
    list: z.string().describe('The list of the house that it holds'),
    known: z.array(z.string()).describe('The columns that this file may have'),
    header: z.array(
      z.strictObject({
        cell: z.string().describe('As it stands in the first line'),
        column: z.string().nullable().describe('The column that it was taken for'),
        guess: z.string().nullable().describe('A column whose name is near'),
      }),
    ),
    rows: z.array(
      z.strictObject({ line: z.number().int().positive(), cells: z.array(z.string()) }),
    ),
  })
  .meta({ id: 'ImportTable', description: 'One CSV file as it was read, cell by cell.' });
export type ImportTable = z.infer<typeof ImportTable>;

export const ImportAnswer = z
  .strictObject({
    house: House.nullable().describe('What the files hold, as far as they can be read'),
    tables: z.array(ImportTable),
    problems: z.array(Problem),
    applied: z.boolean(),
    revision: z.number().int().nonnegative(),
  })
  .meta({ id: 'ImportAnswer' });
export type ImportAnswer = z.infer<typeof ImportAnswer>;

export const ExportAnswer = z
  .strictObject({ files: z.record(z.string(), z.string()) })
  .meta({ id: 'ExportAnswer' });
