export const commands = {
  restartServer: 'linewright.restartServer',
  showLog: 'linewright.showLog',
  openSample: 'linewright.openSample',
  mendSample: 'linewright.mendSample',
  checkWorkspace: 'linewright.checkWorkspace',
  showSheet: 'linewright.showSheet',
  openRule: 'linewright.openRule',
  openPictures: 'linewright.openPictures',
  compareWithLastCommit: 'linewright.compareWithLastCommit',
} as const;
