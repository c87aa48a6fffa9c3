// The server that the comparison builds with Langium: its defaults, number limits, twofold names, formatter, hover, semantic
// tokens, and a scope by map instead of by stream, which is quadratic in the number of names.
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { AstUtils, DefaultScopeProvider, DocumentCache, inject } from 'langium';
import { AbstractFormatter, AbstractSemanticTokenProvider, AstNodeHoverProvider, createDefaultModule, createDefaultSharedModule, Formatting, startLanguageServer } from 'langium/lsp';
import { NodeFileSystem } from 'langium/node';
import { RiglangGeneratedModule, RiglangGeneratedSharedModule } from './generated/module.js';
import limits from './limits.json';

class Formatter extends AbstractFormatter {
  format(node) {
    if (node.$type === 'Model') return;
    const formatter = this.getNodeFormatter(node);
    const [open, close] = [formatter.keyword('{'), formatter.keyword('}')];
    open.prepend(Formatting.oneSpace());
    formatter.interior(open, close).prepend(Formatting.indent());
    close.prepend(Formatting.newLine());
    formatter.keywords(':').prepend(Formatting.noSpace()).append(Formatting.oneSpace());
    formatter.node(node).prepend(Formatting.newLine());
  }
}

class Tokens extends AbstractSemanticTokenProvider {
  highlightElement(node, accept) {
    if ('name' in node) accept({ node, property: 'name', type: 'variable' });
    for (const key of Object.keys(node)) {
      const value = node[key];
      if (key.startsWith('$') || key === 'name' || Array.isArray(value)) continue;
      accept({ node, property: key, type: typeof value === 'number' ? 'number' : typeof value === 'object' ? 'variable' : 'enumMember' });
    }
  }
}

class Hover extends AstNodeHoverProvider {
  getAstNodeHoverContent(node) {
    const own = limits[node.$type];
    return own && `**${node.$type}** ${node.name}\n\n${own.map(([key]) => `- ${key}: ${node[key]}`).join('\n')}`;
  }
}

class MapScope extends DefaultScopeProvider {
  constructor(services) {
    super(services);
    this.known = new DocumentCache(services.shared);
  }
  getScope(context) {
    const type = this.reflection.getReferenceType(context);
    const document = AstUtils.getDocument(context.container);
    if (!document.localSymbols) return super.getScope(context);
    const names = this.known.get(document.uri, type, () => {
      const found = new Map();
      for (const one of document.localSymbols.getStream(document.parseResult.value)) if (!found.has(one.name) && this.reflection.isSubtype(one.type, type)) found.set(one.name, one);
      return found;
    });
    const outer = this.getGlobalScope(type, context);
    const all = super.getScope(context);
    return { getElement: (name) => names.get(name) ?? outer.getElement(name), getElements: (name) => all.getElements(name), getAllElements: () => all.getAllElements() };
  }
}

const module = { references: { ScopeProvider: (services) => new MapScope(services) }, lsp: { Formatter: () => new Formatter(), SemanticTokenProvider: (services) => new Tokens(services), HoverProvider: (services) => new Hover(services) } };
const connection = createConnection(ProposedFeatures.all);
const shared = inject(createDefaultSharedModule({ connection, ...NodeFileSystem }), RiglangGeneratedSharedModule);
const services = inject(createDefaultModule({ shared }), RiglangGeneratedModule, module);
shared.ServiceRegistry.register(services);
const checks = {
  Model: (model, accept) => {
    const seen = new Set();
    for (const block of model.blocks) {
      if (seen.has(block.name)) accept('error', `${block.name} stands twice`, { node: block, property: 'name' });
      seen.add(block.name);
    }
  },
};
for (const [type, own] of Object.entries(limits)) {
  checks[type] = (node, accept) => {
    for (const [key, least, most] of own) if (typeof node[key] === 'number' && (node[key] < least || most < node[key])) accept('error', `${key} must be from ${least} to ${most}`, { node, property: key });
  };
}
services.validation.ValidationRegistry.register(checks);
startLanguageServer(shared);
