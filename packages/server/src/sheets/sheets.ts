/** What leaves the house as a file. */
export { calendarFeed } from './calendar-feed.ts';
export { ordersCsv, ordersXlsx } from './order-sheets.ts';
