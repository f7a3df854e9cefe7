"""The folder of builds: list, copy, rename, bin, history, drafts."""
