"""Asks the desk without a browser: the application in this process, and a folder of its own."""

import asyncio
from concurrent.futures import ThreadPoolExecutor

import httpx

HOST = "127.0.0.1:8123"


class Desk:
    """`get` and `post` as a page of the desk would; headers may be changed."""

    def __init__(self, folder, language="en"):
        from unpin.workbench.app import desk
        from unpin.workbench.folder import Folder

        self.folder = folder
        self.app = desk(Folder(folder), (HOST, "localhost:8123"), language)

    def ask(self, method, path, headers=None, **how):
        async def asked():
            async with httpx.AsyncClient(transport=httpx.ASGITransport(self.app), base_url=f"http://{HOST}") as client:
                return await client.request(method, path, headers=headers, **how)

        # In a thread of its own: tests in a browser leave a loop running in this one.
        with ThreadPoolExecutor(1) as pool:
            return pool.submit(lambda: asyncio.run(asked())).result()

    def get(self, path, headers=None, **params):
        return self.ask("GET", path, headers, params=params)

    def post(self, path, headers=None, **data):
        return self.ask("POST", path, headers, json=data)
