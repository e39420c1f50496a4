/** As `scripts/build-web.js` bundles them. */
// @ts-nocheck

declare module "*.yaml" {
  const text: string;
  export default text;
}
