/** Version of a take's result; raised whenever a reader of the previous version could misread it. */
export const takeResultVersion = 1;
