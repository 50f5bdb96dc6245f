declare module "*.module.css" {
  const names: Readonly<Record<string, string>>;
  // biome-ignore lint/style/noDefaultExport: this is how a style sheet hands out its class names
  export default names;
}
declare module "*.css" {}
