// What a column of somebody else's table most likely is, where its name is not one of ours.
import { nearest } from '../../planner/index.ts';
import { type CsvList, columnsOf } from './columns.ts';

/** Other words for columns, in plain letters. None that names another unit: EBC is not SRM. */
const OTHER_WORDS: { readonly [column: string]: readonly string[] } = {
  brew: ['beer', 'name', 'recipe', 'batch', 'bier'],
  style: ['beer style', 'stil'],
  yeast: ['yeasts', 'strain', 'strains', 'hefe'],
  volume_l: ['volume', 'litres', 'liters', 'batch size', 'batch size l', 'size l', 'volume litres'],
  og: ['original gravity', 'starting gravity', 'start gravity', 'sg'],
  fg: ['final gravity', 'terminal gravity', 'end gravity'],
  ebc: ['colour ebc', 'color ebc'],
  ibu: ['bitterness', 'ibus'],
  ferment_c: ['temperature', 'temp', 'temp c', 'fermentation temperature', 'ferment temp'],
  tank_days: ['days in tank', 'days in the tank', 'fermentation days', 'fermenter days'],
  condition_days: ['conditioning', 'conditioning days', 'lagering days'],
  dry_hop_day: ['dry hop', 'dry hop on day'],
  not_before: ['earliest', 'from'],
  ready_by: ['ready', 'wanted', 'due', 'serve by', 'in the glass'],
  brew_on: ['brew date', 'brew day', 'date', 'fixed day'],
  value: ['worth'],
  tank: ['vessel', 'fermenter', 'fermentor', 'fv', 'name'],
  min_fill_l: ['smallest fill', 'min l', 'min litres'],
  max_fill_l: ['largest fill', 'max l', 'max litres', 'capacity', 'capacity l', 'volume l'],
  min_c: ['coldest', 'min temp', 'min temperature'],
  max_c: ['warmest', 'max temp', 'max temperature'],
  turnaround_days: ['turnaround', 'cleaning days'],
  pack_price: ['price', 'cost'],
  packs_on_hand: ['packs', 'stock', 'in stock'],
  packs_made_on: ['made on', 'manufactured', 'production date'],
  jar: ['code', 'label', 'lid'],
  settled_ml: ['ml', 'slurry ml', 'volume ml'],
  harvested_on: ['harvested', 'harvest date'],
  measured_viability: ['viability'],
};

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** The column of a list that a strange header most likely means; null where none is near. */
export function guessColumn(list: CsvList, cell: string): string | null {
  const names = columnsOf(list).map(([, { column }]) => column);
  const word = plain(cell);
  const same = names.find((name) => plain(name) === word);
  const other = names.find((name) => OTHER_WORDS[name]?.includes(word));
  return same ?? other ?? nearest(cell, names);
}
