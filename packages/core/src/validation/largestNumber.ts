/** No weight, price, count or amount is larger: more than any garage will meet, and so little that sums and products of them stay far from
 * overflow. One ceiling for the model, the case and the circumstances. */
export const LARGEST_NUMBER = 1e9;
