export const prerender = true;
// Each page becomes a folder with its own index.html: any static host serves it without rewrite rules.
export const trailingSlash = 'always';
