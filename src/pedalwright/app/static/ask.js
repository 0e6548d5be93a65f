// Asking the server: always JSON, and an answer even where there is none.
export async function send(path, body) {
  try {
    const got = await fetch(path, body === undefined ? {} : {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    return { ok: got.ok, status: got.status, said: await got.json() };
  } catch {
    return { ok: false, status: 0, said: { says: "The server does not answer." } };
  }
}

export function faultsText(said) {
  if (!said.faults) return said.says ?? "That did not work.";
  return said.faults.map(faultText).join(" ");
}

export function faultText(fault) {
  const offers = fault.offers?.length ? ` Did you mean ${fault.offers.join(" or ")}?` : "";
  return `${fault.where}: read “${fault.read}”. ${fault.accepts}${offers}`;
}
