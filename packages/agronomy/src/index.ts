/**
 * The science of the trade: reference tables with their sources, and one file a model. Knows no farm, clock or file.
 * Models come as namespaces by subject, so that `canopy.canopyFor(…)` says where to read.
 */

export type {
  CalcAnswer,
  CalcInput,
  CalcModel,
  CalcOutput,
  CalcProblem,
  CalcValue,
  ReadText,
} from './calc/calc-model.ts';
export { type CheckedRow, type CheckRow, runCheckTable } from './calc/check-table.ts';
export { calcModelNamed, calcModels } from './calc/registry.ts';
export * as carbon from './carbon/carbon.ts';
export type { HumusMaterial, HumusUse } from './carbon/humus-balance.ts';
export type { CarbonInput, CarbonMonth, CarbonPools, CarbonSpinUp, CarbonState } from './carbon/rothc.ts';
export type { CanopyChoice } from './cover/canopy-choice.ts';
export * as canopyChoice from './cover/canopy-choice.ts';
export type { CanopyCurve, CoverSpan } from './cover/canopy-curve.ts';
export * as canopyCurve from './cover/canopy-curve.ts';
export type { CoverState } from './cover/ground-cover.ts';
export * as groundCover from './cover/ground-cover.ts';
export type { DrawnWeather, DrawWeather } from './drawn-weather/draw.ts';
export * as drawnWeather from './drawn-weather/drawn-weather.ts';
export type { WeatherGenerator } from './drawn-weather/generator.ts';
export * as decline from './families/decline.ts';
export type { CountingSeason, RestGap } from './families/return-interval.ts';
export * as returnInterval from './families/return-interval.ts';
export * as degreeDays from './growth/degree-days.ts';
export type { EmergenceSum } from './growth/emergence.ts';
export * as emergence from './growth/emergence.ts';
export type { Maturity } from './growth/maturity.ts';
export * as maturity from './growth/maturity.ts';
export type { StageSums } from './growth/stages.ts';
export * as stages from './growth/stages.ts';
export type { ThermalSettings, ThermalSums } from './growth/thermal-sums.ts';
export * as thermal from './growth/thermal-sums.ts';
export * as hedgeWork from './habitat/hedge-work.ts';
export type { LimeCaution, LimeSoil } from './minerals/lime.ts';
export * as minerals from './minerals/minerals.ts';
export type { OfftakeRate } from './minerals/offtake.ts';
export type { ElementKgHa, OxideKgHa } from './minerals/oxides.ts';
export type { SmallNutrientGround, SmallNutrientRisk } from './minerals/small-nutrients.ts';
export type { SoilIndex, SoilMethod, SoilNutrient } from './minerals/soil-index.ts';
export type { MethodConversion, RunDown, SoilSample, SoilTrend } from './minerals/soil-trend.ts';
export type { CoverUse } from './nitrogen/fixation.ts';
export * as fixation from './nitrogen/fixation.ts';
export * as nitrogenModels from './nitrogen/nitrogen-models.ts';
export type { WinterGround, YearlyNitrogen } from './nitrogen/yearly-balance.ts';
export * as nitrogenBalance from './nitrogen/yearly-balance.ts';
export type { AirDay, BlightDay, BlightRule, DampDay } from './pests/blight.ts';
export type { PestDue, PestPlace, PestWeather } from './pests/pest-sums.ts';
export * as pests from './pests/pests.ts';
export type { DemandFigure, Rule, Source } from './reference/book-columns.ts';
export { type CellSource, type ReferenceCell, referenceCell } from './reference/cell.ts';
export type { Cover, MixPart, StorageRow, UndersowWeeks } from './reference/cover-columns.ts';
export type { Crop } from './reference/crop-columns.ts';
export type { Habitat, LabourRate, RestInterval, WeedPass } from './reference/ground-columns.ts';
export type { Pest, PestModel } from './reference/pest-columns.ts';
export { type ReferenceProblem, referenceProblems } from './reference/problems.ts';
export { type Reference, reference } from './reference/reference.ts';
export type { HowKnown } from './reference/ways-of-knowing.ts';
export * as areaNeeded from './seed/area-needed.ts';
export * as population from './seed/population.ts';
export type { RowSowing, SeedOrder } from './seed/seed-order.ts';
export * as seedOrder from './seed/seed-order.ts';
export * as trays from './seed/trays.ts';
export * as soilAccount from './soil/soil-account.ts';
export type { ReadonlyNumbers, SoilColumn, SoilRun, SoilTransfer, StandOutcome } from './soil/soil-columns.ts';
export type {
  CutUse,
  SoilBrought,
  SoilIrrigation,
  SoilPart,
  SoilStand,
  SoilWeather,
  StandCut,
  StandEnding,
  StandHabit,
} from './soil/soil-part.ts';
export type { SoilProfile, Texture } from './soil/soil-profile.ts';

export type { DrawDown, StoreWeek } from './storage/store-loss.ts';
export * as storeLoss from './storage/store-loss.ts';
export type { BucketCrop, BucketDay, IrrigationRule, WaterDrawn } from './water/single-bucket.ts';
export * as bucket from './water/single-bucket.ts';
export * as water from './water/water-models.ts';
export type { ClimateStation, NearestClimate } from './weather/climate.ts';
export * as climate from './weather/climate.ts';
export type { DailyNormals } from './weather/daily-normals.ts';
export * as dailyNormals from './weather/daily-normals.ts';
export * as dayLength from './weather/day-length.ts';
export * as hoursOfDay from './weather/hours-of-day.ts';
export * as radiation from './weather/radiation.ts';
export type {
  EvapotranspirationDay,
  ReferenceEvapotranspiration,
  WeatherPlace,
} from './weather/reference-evapotranspiration.ts';
export * as evapotranspiration from './weather/reference-evapotranspiration.ts';
export * as vapourPressure from './weather/vapour-pressure.ts';
export type { WeatherDay, WeatherOrigin, WeatherSeries } from './weather/weather-series.ts';
export * as weather from './weather/weather-series.ts';
