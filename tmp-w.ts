import { readFileSync } from 'node:fs';
import { parseSheet } from './src/core/exercise/parse-sheet.ts';
import { gradeTake } from './src/core/grade-take.ts';
import { memoryBytes } from './src/formats/memory-bytes.ts';
import { riffLayout } from './src/formats/riff-layout.ts';
import { wavSource } from './src/formats/wav-source.ts';
const k=process.argv[2];
const p = parseSheet(readFileSync(`/tmp/s-${k}.sheet`,'utf8')); if(!p.ok) throw 1;
const bytes = readFileSync(`/tmp/s-${k}.wav`);
const l = riffLayout(memoryBytes(bytes)); if(!l.ok) throw 2;
for (let i=0;i<6;i++){ const c=process.cpuUsage(); const t=performance.now(); const r=gradeTake(wavSource(memoryBytes(bytes),l.layout),p.sheet); const d=process.cpuUsage(c); console.log(k,(performance.now()-t).toFixed(0),(d.user/1000).toFixed(0), r.strokes.time.length);} 
