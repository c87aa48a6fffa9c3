-- Opens the rig with Neovim's built-in client and writes down what it shows, as JSON.
-- Called with: LINEWRIGHT_TRY = {"command": [...], "hoverLine": 0, "hoverColumn": 0, "asOf": "...", "answer": "file"}
local try = vim.fn.json_decode(vim.env.LINEWRIGHT_TRY)
local wait_ms = 20000

local client = vim.lsp.start_client({
  name = 'linewright',
  cmd = try.command,
  root_dir = vim.fn.getcwd(),
  settings = { linewright = { check = { asOf = try.asOf } } },
})
vim.lsp.buf_attach_client(0, client)

vim.wait(wait_ms, function()
  return #vim.diagnostic.get(0) > 0
end, 20)

local answers = vim.lsp.buf_request_sync(0, 'textDocument/hover', {
  textDocument = { uri = vim.uri_from_bufnr(0) },
  position = { line = try.hoverLine, character = try.hoverColumn },
}, wait_ms)
local hover = answers and answers[client] and answers[client].result

local found = {}
for _, diagnostic in ipairs(vim.diagnostic.get(0)) do
  table.insert(found, { line = diagnostic.lnum, message = diagnostic.message, source = diagnostic.source })
end
vim.fn.writefile({ vim.fn.json_encode({ diagnostics = found, hover = hover or vim.NIL }) }, try.answer)

vim.lsp.stop_client(client)
vim.wait(wait_ms, function()
  return not vim.lsp.get_client_by_id(client)
end, 20)
vim.cmd('qall!')
