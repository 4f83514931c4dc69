;; The kernel of smallSystem.ts with two numbers to an instruction: plainSystem.ts line by line, the same sums in the same
;; order. The room is 60 rows of 64 numbers from address 0: row a, column b stands at 512 a + 8 b. Rows are held by their
;; address, columns by 8 b. scripts/buildKernels.ts makes simdSystemBytes.ts out of this text.
(module
  (memory (export "room") 1)

  (func (export "solve") (param $count i32)
    (local $row i32)     ;; column of the pivot of the first of two rows
    (local $first i32)   ;; the two rows
    (local $second i32)
    (local $above i32)   ;; a row above them
    (local $column i32)
    (local $width i32)   ;; column after the sides
    (local $end i32)     ;; column of the pivot of the first row without a partner
    (local $u v128) (local $w v128) (local $x v128)
    (local $a0 v128) (local $a1 v128) (local $b0 v128) (local $b1 v128)
    (local $inverse f64) (local $cross f64) (local $inverseBelow f64)

    (local.set $width (i32.shl (i32.add (local.get $count) (i32.const 2)) (i32.const 3)))
    (local.set $end (i32.shl (i32.and (local.get $count) (i32.const -2)) (i32.const 3)))

    (block $pairsDone
      (loop $pair
        (br_if $pairsDone (i32.ge_u (local.get $row) (local.get $end)))
        (local.set $second (i32.add (local.get $first) (i32.const 512)))

        ;; The column after the sides is worked on with them where their number is odd. It is 0, for what another system
        ;; left there would shrink, time after time, into the tiny numbers at which processors are slow.
        (f64.store (i32.add (local.get $first) (local.get $width)) (f64.const 0))
        (f64.store (i32.add (local.get $second) (local.get $width)) (f64.const 0))

        ;; Take what the rows above explain off four columns of two rows.
        (local.set $column (local.get $row))
        (loop $four
          (local.set $a0 (v128.load (i32.add (local.get $first) (local.get $column))))
          (local.set $a1 (v128.load offset=16 (i32.add (local.get $first) (local.get $column))))
          (local.set $b0 (v128.load (i32.add (local.get $second) (local.get $column))))
          (local.set $b1 (v128.load offset=16 (i32.add (local.get $second) (local.get $column))))
          (local.set $above (i32.const 0))
          (block $aboveDone
            (loop $next
              (br_if $aboveDone (i32.ge_u (local.get $above) (local.get $first)))
              (local.set $u (v128.load64_splat (i32.add (local.get $above) (local.get $row))))
              (local.set $w (v128.load64_splat offset=8 (i32.add (local.get $above) (local.get $row))))
              (local.set $x (v128.load (i32.add (local.get $above) (local.get $column))))
              (local.set $a0 (f64x2.sub (local.get $a0) (f64x2.mul (local.get $u) (local.get $x))))
              (local.set $b0 (f64x2.sub (local.get $b0) (f64x2.mul (local.get $w) (local.get $x))))
              (local.set $x (v128.load offset=16 (i32.add (local.get $above) (local.get $column))))
              (local.set $a1 (f64x2.sub (local.get $a1) (f64x2.mul (local.get $u) (local.get $x))))
              (local.set $b1 (f64x2.sub (local.get $b1) (f64x2.mul (local.get $w) (local.get $x))))
              (local.set $above (i32.add (local.get $above) (i32.const 512)))
              (br $next)))
          (v128.store (i32.add (local.get $first) (local.get $column)) (local.get $a0))
          (v128.store offset=16 (i32.add (local.get $first) (local.get $column)) (local.get $a1))
          (v128.store (i32.add (local.get $second) (local.get $column)) (local.get $b0))
          (v128.store offset=16 (i32.add (local.get $second) (local.get $column)) (local.get $b1))
          (local.set $column (i32.add (local.get $column) (i32.const 32)))
          (br_if $four (i32.lt_u (local.get $column) (local.get $width))))

        ;; The two pivots, then the rest of both rows, two columns at a time.
        (local.set $inverse (call $inverseRoot (f64.load (i32.add (local.get $first) (local.get $row)))))
        (local.set $cross
          (f64.mul (f64.load offset=8 (i32.add (local.get $first) (local.get $row))) (local.get $inverse)))
        (local.set $inverseBelow
          (call $inverseRoot
            (f64.sub (f64.load offset=8 (i32.add (local.get $second) (local.get $row)))
              (f64.mul (local.get $cross) (local.get $cross)))))
        (f64.store offset=8 (i32.add (local.get $first) (local.get $row)) (local.get $cross))
        (local.set $u (f64x2.splat (local.get $inverse)))
        (local.set $w (f64x2.splat (local.get $cross)))
        (local.set $x (f64x2.splat (local.get $inverseBelow)))
        (local.set $column (i32.add (local.get $row) (i32.const 16)))
        (loop $two
          (local.set $a0
            (f64x2.mul (v128.load (i32.add (local.get $first) (local.get $column))) (local.get $u)))
          (v128.store (i32.add (local.get $first) (local.get $column)) (local.get $a0))
          (v128.store (i32.add (local.get $second) (local.get $column))
            (f64x2.mul
              (f64x2.sub (v128.load (i32.add (local.get $second) (local.get $column)))
                (f64x2.mul (local.get $w) (local.get $a0)))
              (local.get $x)))
          (local.set $column (i32.add (local.get $column) (i32.const 16)))
          (br_if $two (i32.lt_u (local.get $column) (local.get $width))))

        (local.set $row (i32.add (local.get $row) (i32.const 16)))
        (local.set $first (i32.add (local.get $first) (i32.const 1024)))
        (br $pair)))

    ;; A row left over: its pivot, and the two sides together.
    (if (i32.and (local.get $count) (i32.const 1))
      (then
        (local.set $cross (f64.load (i32.add (local.get $first) (local.get $row))))
        (local.set $a0 (v128.load offset=8 (i32.add (local.get $first) (local.get $row))))
        (local.set $above (i32.const 0))
        (block $leftDone
          (loop $left
            (br_if $leftDone (i32.ge_u (local.get $above) (local.get $first)))
            (local.set $inverse (f64.load (i32.add (local.get $above) (local.get $row))))
            (local.set $cross
              (f64.sub (local.get $cross) (f64.mul (local.get $inverse) (local.get $inverse))))
            (local.set $a0
              (f64x2.sub (local.get $a0)
                (f64x2.mul (f64x2.splat (local.get $inverse))
                  (v128.load offset=8 (i32.add (local.get $above) (local.get $row))))))
            (local.set $above (i32.add (local.get $above) (i32.const 512)))
            (br $left)))
        (v128.store offset=8 (i32.add (local.get $first) (local.get $row))
          (f64x2.mul (f64x2.splat (call $inverseRoot (local.get $cross))) (local.get $a0))))))

  (func $inverseRoot (param $pivot f64) (result f64)
    (f64.div (f64.const 1) (f64.sqrt (f64.max (f64.const 1e-4) (local.get $pivot))))))
