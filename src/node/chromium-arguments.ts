/**
 * How a Chromium is started to print pages of a pack: with a profile of its own, and so that it asks nothing of the
 * network and nothing of the person at the computer. What a version does not know, it passes over.
 * @param profileFolder Where it keeps what it keeps.
 * @param isRoot Whether it will run as the administrator of Linux: then it refuses to start with its sandbox. What it
 * opens are pages that the kit has just written, without their scripts.
 */
export function listChromiumArguments(profileFolder: string, isRoot = process.getuid?.() === 0): string[] {
  return [
    '--headless',
    '--remote-debugging-pipe',
    `--user-data-dir=${profileFolder}`,
    ...(isRoot ? ['--no-sandbox'] : []),
    // Versions before 119 tag what they print only when told to here.
    '--export-tagged-pdf',
    '--disable-gpu',
    // Letters stand where they stand on other computers.
    '--font-render-hinting=none',
    // No address is looked up, whatever asks for one: not by the browser, nor by a proxy, nor among its neighbours.
    '--host-resolver-rules=MAP * ~NOTFOUND',
    '--no-proxy-server',
    '--disable-features=MediaRouter,DialMediaRouteProvider,NetworkTimeServiceQuerying,OptimizationHints,OptimizationGuideModelDownloading,Translate',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-default-apps',
    '--disable-extensions',
    '--disable-sync',
    '--no-pings',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-breakpad',
    '--disable-crash-reporter',
    // Containers have little shared memory.
    '--disable-dev-shm-usage',
    // No question for the password of the system's key ring.
    '--password-store=basic',
    '--use-mock-keychain',
    // Else it opens its own start page.
    'about:blank',
  ];
}
