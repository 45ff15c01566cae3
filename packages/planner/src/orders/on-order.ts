/** Seed to order, and plants to raise. */
export { plantsRaised, sownOnDay } from '../plants/plants-raised.ts';
export { orderColumns, orderSheet, seedAddedUpKg, seedBy } from './order-sheet.ts';
export { seedLines } from './seed-need.ts';
export { seedOrders, seedRights } from './seed-orders.ts';
