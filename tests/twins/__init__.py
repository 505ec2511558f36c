"""Second methods: slow, obvious programs that answer the kernel's questions another way."""
