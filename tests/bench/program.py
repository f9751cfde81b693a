"""Talks to stallwright-bench: a request a line, an answer a line of JSON."""
import json
import os
import re
import subprocess


def plain_environment():
    """Without a choice of kernel."""
    return {k: v for k, v in os.environ.items() if k != "STALLWRIGHT_LANES"}


class Program:
    def __init__(self, file):
        self.file = file
        self.process = None

    def __enter__(self):
        self.process = subprocess.Popen([self.file], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
                                        env=plain_environment())
        return self

    def __exit__(self, *_):
        self.process.stdin.close()
        self.process.wait()

    def ask(self, *words):
        self.process.stdin.write(" ".join(map(str, words)) + "\n")
        self.process.stdin.flush()
        answer = self.process.stdout.readline()
        if not answer:
            raise SystemExit(f"stallwright: bench: no answer to: {' '.join(map(str, words))}")
        return json.loads(answer)


def ask_once(file, *words):
    """In a process of its own, whose peak of memory is that of this request alone."""
    with Program(file) as program:
        return program.ask(*words)


def instructions(file, folder, *words):
    """Instructions per aeroplane-step by callgrind, which counts in the timed part alone."""
    out = os.path.join(folder, "callgrind.out")
    command = ["valgrind", "--tool=callgrind", "--collect-atstart=no", "--toggle-collect=stallwright_bench_timed",
               f"--callgrind-out-file={out}", file]
    done = subprocess.run(command, input=" ".join(map(str, words)) + "\n", capture_output=True, text=True,
                          env=plain_environment(), check=False)
    collected = re.search(r"Collected : (\d+)", done.stderr)
    if done.returncode != 0 or collected is None:
        raise SystemExit("stallwright: bench: callgrind gave no count:\n" + done.stderr)
    return int(collected[1]) / json.loads(done.stdout)["steps"]
