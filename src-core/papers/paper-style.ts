/** The look of every paper, on a screen and printed: dark ink on white, one column, nothing that means something by colour alone. */
export const paperStyle = `
@page{margin:8mm 12mm}
*{box-sizing:border-box}
body{font:9.4pt/1.28 system-ui,-apple-system,"Segoe UI","Noto Sans",Arial,sans-serif;color:#111820;background:#fff;max-width:186mm;margin:8mm auto;padding:0 4mm;overflow-wrap:anywhere;font-variant-numeric:tabular-nums}
header{border-bottom:1.5pt solid #111820;margin-bottom:2mm}
h1{font-size:17pt;line-height:1.15;margin:0 0 1mm}
header p{margin:0 0 1.5mm;color:#46525c}
h2{font-size:11.5pt;line-height:1.2;margin:2.4mm 0 .9mm;break-after:avoid}
p{margin:0 0 1.4mm;orphans:2;widows:2}
ol,ul{margin:0 0 1.4mm;padding-left:6.5mm}
li{margin:0 0 .4mm;break-inside:avoid}
ol>li::marker{font-weight:650}
ul.boxes{list-style:none;padding:0;columns:2;column-gap:6mm}
ul.boxes>li{padding-left:6mm;position:relative;min-height:4.7mm}
ul.boxes>li::before{content:"";position:absolute;left:0;top:.7mm;width:3.4mm;height:3.4mm;border:.8pt solid #111820}
code{font:inherit;font-weight:650}
table{border-collapse:collapse;width:100%;margin:0 0 1.6mm;font-size:9pt;line-height:1.25}
thead{display:table-header-group}
tr{break-inside:avoid}
th,td{border-bottom:.5pt solid #b4bcc3;padding:.5mm 2mm .5mm 0;text-align:left;vertical-align:top;font-weight:400}
thead th{border-bottom:1pt solid #111820;font-weight:650;vertical-align:bottom}
tbody th{font-weight:600}
table.by-hand th,table.by-hand td{border:.5pt solid #7b858d;padding:.75mm 1.2mm}
table.by-hand{line-height:1.2;table-layout:fixed}
table.by-hand tbody tr{height:6.4mm}
.folded{display:flex;gap:4mm;align-items:flex-start}
.folded th{white-space:nowrap}
.folded>table{flex:1 1 0;width:50%}
section{break-inside:avoid}
section.long{break-inside:auto}
figure{margin:0 0 2mm;break-inside:avoid}
figure svg{width:100%;height:auto;display:block}
figure.share-60{width:60%}
figure.share-70{width:70%;max-width:129mm}
figure.share-75{width:75%}
.quiet,footer{color:#46525c;font-size:8.5pt;line-height:1.3}
footer{break-inside:avoid;border-top:.5pt solid #7b858d;margin-top:2mm;padding-top:1mm}
footer p{margin:0 0 .8mm}
.strong{font-weight:650;margin:1.6mm 0 .6mm;break-after:avoid}
.lead{font-size:11pt;font-weight:650;border:1pt solid #111820;padding:1.4mm 2.4mm;margin:0 0 2mm}
.finding{border-left:2.5pt solid #46525c;padding-left:2.4mm;break-inside:avoid}
.finding.error{border-left:4pt double #111820}
.finding span{display:block;color:#2c3740}
.finding i{color:#46525c;font-size:8.5pt;font-style:normal}
ul.blanks{list-style:none;padding:0;columns:2;column-gap:8mm}
ul.blanks>li{display:flex;gap:2mm;align-items:flex-end;min-height:6mm}
ul.blanks>li::after{content:"";flex:1;min-width:18mm;border-bottom:.6pt solid #111820}
@media print{body{margin:0;padding:0;max-width:none}.new-page{break-before:page}}
@media screen and (max-width:600px){ul.boxes,ul.blanks{columns:1}table{font-size:8.5pt}}
`.trim();
