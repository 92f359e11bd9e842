// Run by kill.test.ts: writes entry after entry and says each number once its write has been acknowledged.
import { readHouse, saveHouse } from '../../../api/store/house.ts';
import { openStore } from '../../../api/store/index.ts';
import { addEntry, readRecord } from '../../../api/store/record.ts';
import { aHouse } from '../../builders/plan.ts';
import { entryOf } from '../../builders/record.ts';

const store = await openStore({ url: process.argv[2] ?? '' });
if ((await readHouse(store.db)) === null) {
  await store.write((tx) =>
    saveHouse(tx, { house: aHouse(), demo: false, at: store.now(), startOver: false }),
  );
}
let no = (await readRecord(store.db, 1)).length;
for (;;) {
  no += 1;
  // Two rows belong together: the entry and the revision of the house of the same number.
  await store.write(async (tx) => {
    await addEntry(tx, 1, store.now(), entryOf(no));
    const house = aHouse({ name: `After entry ${no}` });
    await saveHouse(tx, { house, demo: false, at: store.now(), startOver: false });
  });
  process.stdout.write(`${no}\n`);
}
