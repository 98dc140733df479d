import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { it } from 'vitest';
import { buildWeek, DEMO_CONTENT, makeWeek, openContent, writeLesson } from '../../directives/build-week.ts';
it('builds', () => {
  const kinds = ['match-moons', 'lit-side', 'moon-up-at', 'gesture-of-night', 'run-length'];
  for (const school of ['saltgrass-point', 'ormevire']) {
    const body = ':::group-quiz[Which night?]{groups=2}\n' + kinds.map((k) => `::question{ask=${k}}`).join('\n\n') + '\n:::';
    const built = buildWeek(makeWeek({ 'a.md': writeLesson(body) }, { school }), openContent(DEMO_CONTENT));
    console.log(JSON.stringify(built.diagnostics, null, 1));
    for (const { path, content } of built.plan?.files ?? []) {
      const to = join(`/tmp/sky-pack-${school}`, path);
      mkdirSync(dirname(to), { recursive: true });
      writeFileSync(to, content);
    }
  }
});
