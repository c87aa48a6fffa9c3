export const commands = {
  restartServer: 'linewright.restartServer',
  showLog: 'linewright.showLog',
  openSample: 'linewright.openSample',
  mendSample: 'linewright.mendSample',
  checkWorkspace: 'linewright.checkWorkspace',
  showSheet: 'linewright.showSheet',
  showTokens: 'linewright.showTokens',
  showTree: 'linewright.showTree',
  showModel: 'linewright.showModel',
  openRule: 'linewright.openRule',
  openPictures: 'linewright.openPictures',
  compareWithLastCommit: 'linewright.compareWithLastCommit',
} as const;
