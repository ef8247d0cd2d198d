import { expect, it } from 'vitest';
import { looksWireless } from '../../../../src/page/recording/calibration/looks-wireless.ts';

it('looksWireless goes by the name, then by the delay', () => {
  expect(looksWireless('Headset (Bluetooth)', null)).toBe('name');
  expect(looksWireless('Hands-Free AG Audio', 0.02)).toBe('name');
  expect(looksWireless('Bright Buds Stereo', 0.02)).toBe('name');
  expect(looksWireless('Built-in speakers', 0.03)).toBeNull();
  expect(looksWireless('Built-in speakers', 0.21)).toBe('latency');
  expect(looksWireless('', null)).toBeNull();
  expect(looksWireless('Subtle line out', null)).toBeNull();
});
