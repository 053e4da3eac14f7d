"""The frozen values every step speaks: money, part number, offer, quote line, order, problem."""
