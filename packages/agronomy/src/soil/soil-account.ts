/** The daily account of the ground under one name: the run, what it is given, what it answers. */
export * as cropAnswer from '../growth/crop-answer.ts';
export { habitOfCover, habitOfCrop } from '../growth/stand-habits.ts';
export { soilWeather } from '../water/day-weather.ts';
export { runSoil } from './run-soil.ts';
export { soilColumns } from './soil-columns.ts';
export * as profiles from './soil-profile.ts';
export { mostStands } from './soil-state.ts';
export * as temperature from './soil-temperature.ts';
