#pragma once
// Marks what other programs may call.

#define PLUMBRULE_EXPORT __attribute__((visibility("default")))
