/** As `scripts/build-web.js` bundles them. */
declare module "*.yaml" {
  const text: string;
  export default text;
}
