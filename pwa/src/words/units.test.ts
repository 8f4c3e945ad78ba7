import { effect } from '@preact/signals'
import { afterEach, expect, test } from 'vitest'
import { degrees, gasSpeed, mass, temperature, units, volume, wholeDegrees, windSpeed } from './units'

afterEach(() => (units.value = 'metric'))

const said = () => [temperature(552), temperature(93.4), gasSpeed(1.5), windSpeed(5), mass(0.05), mass(2), mass(80), volume(0.1), volume(0.5), volume(20)]

test('metric', () => {
  expect(said()).toEqual(['550 °C', '93 °C', '1.50 m/s', '5 m/s', '50 g', '2 kg', '80 kg', '100 ml', '500 ml', '20 l'])
})

test('US', () => {
  units.value = 'us'
  expect(said()).toEqual(['1030 °F', '200 °F', '4.9 ft/s', '11 mph', '1.8 oz', '4.4 lb', '176 lb', '3.4 fl oz', '16.9 fl oz', '5.3 gal'])
})

test('the two scales meet at forty below', () => {
  units.value = 'us'
  expect(degrees(-40)).toBeCloseTo(-40, 9)
})

test('who writes a figure does not subscribe to the units: it would stand still with a fire that changes in place', () => {
  let written = 0
  const stop = effect(() => {
    said()
    written++
  })
  units.value = 'us'
  stop()
  expect(written).toBe(1)
})

test('what is said in tens is compared in tens', () => {
  expect([wholeDegrees(99.4), wholeDegrees(604), wholeDegrees(-0.2)].map(String)).toEqual(['99', '600', '0'])
})
